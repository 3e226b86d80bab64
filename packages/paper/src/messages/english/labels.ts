import type { LabelsMessages } from "../labels-messages.ts";

export const ENGLISH_LABELS: LabelsMessages = {
  title: "Syringe labels",
  subtitle: "Print this page on plain paper first and measure its rulers; the labels follow",
  how: "Hold the next page, printed on plain paper, against a sheet of labels before a light: every label must lie in its place. Then print it on the labels at 100 %. Stick a label on a syringe only after a second person has checked what is in it; throw away what is left when the child has gone.",
  noLabels: "No dose of the chosen problems is drawn into a syringe.",
  drawnUp: "drawn up",
  by: "by",
  classes: {
    induction: "induction agent",
    benzodiazepine: "benzodiazepine",
    "benzodiazepine-antagonist": "benzodiazepine antagonist",
    relaxant: "muscle relaxant",
    "relaxant-antagonist": "relaxant antagonist",
    opioid: "opioid",
    "opioid-antagonist": "opioid antagonist",
    vasopressor: "vasopressor",
    hypotensive: "hypotensive agent",
    "local-anaesthetic": "local anaesthetic",
    anticholinergic: "anticholinergic",
    antiemetic: "antiemetic",
  },
  weight: ({ kg, basis }) => `for ${kg} ${basis}`,
};
