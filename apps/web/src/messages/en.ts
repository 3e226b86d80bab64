import type { ChildReport } from "@steelyard/core/child";
import type { Basis } from "@steelyard/core/dosing";
import type { BedsideField } from "../state/bedside-state.ts";

/**
 * Every word of the screen itself. Sentences about a child (issues, notices, warnings, working) come from
 * `@steelyard/core/wording`, which the command line and the paper share.
 */
export const en = {
  name: "Steelyard",
  screen: "Bedside",
  nextChild: "New child",
  bringBack: "Bring back the last child",
  carriedOver: "These values were typed before the page was reloaded. Is this still the same child?",
  entry: "Measurements",
  fields: {
    lengthCm: { label: "Length, lying", unit: "cm", hint: "crown to heel" },
    armMm: { label: "Arm, mid-upper", unit: "mm", hint: "around, relaxed" },
    ageMonths: { label: "Age", unit: "", hint: "as 9 y, 18 mo or 3 w" },
    sex: { label: "Sex", unit: "", hint: "" },
  } satisfies Record<BedsideField, { label: string; unit: string; hint: string }>,
  unitNames: { cm: "in centimetres", mm: "in millimetres" },
  sexes: { "": "not known", f: "girl", m: "boy" },
  take: (proposal: string): string => `Take ${proposal}`,
  ask: { sex: "Add sex", ageMonths: "Add age" },
  weight: "Weight",
  total: "Total weight",
  ideal: "Ideal weight",
  idealShort: "ideal",
  idealUnknown: "not known without a length",
  range: "95 % range",
  to: "to",
  kg: "kg",
  noWeightYet: "No weight yet",
  sheet: "Doses",
  problems: "Problems",
  draftLine: "draft",
  basis: { total: "total", ideal: "ideal", adjusted: "adjusted", lean: "lean" } satisfies Record<
    Basis,
    string
  >,
  on: (basis: string): string => `on ${basis} weight`,
  of: "of",
  addedTo: "added to",
  startAt: "start at",
  noDose: "No dose",
  flag: {
    rounded: (percent: string, isLess: boolean): string =>
      `rounded ${isLess ? "down" : "up"} ${percent}\u00a0%`,
    limited: { "single-maximum": "limited to the single maximum", minimum: "raised to the minimum" },
    basesDiffer: "total and ideal weight differ",
    basisSwapped: "on total weight, not ideal",
    ageNeeded: "age needed",
    neonate: "not for newborns",
  },
  diluteFirst: "Dilute first: take",
  add: "add",
  working: "Working",
  notes: "Notes",
  certainty: "How sure",
  accepted: "Accepted range",
  outside: (percent: string): string =>
    `Probability that the dose lies outside it for the true weight: ${percent}\u00a0%.`,
  underOne: "under 1",
  further: "Further doses",
  preparations: "Making up the syringe",
  preparationKind: { fixed: "Fixed concentration", "per-kg": "Made up by weight" },
  madeUpTo: "made up to",
  with: "with",
  rateRange: "range",
  lasts: (hours: string): string => `One syringe lasts ${hours} h at that rate.`,
  chosen: (option: string, reason: string | undefined): string =>
    reason === undefined ? `Computed here: ${option}.` : `Computed here: ${option}. ${reason}`,
  alternatives: "Other published doses",
  given: "Giving it",
  repeat: "Repeat",
  cautions: "Cautions",
  contraindications: "Not to be given",
  incompatibilities: "Do not mix with",
  monitoring: "Watch",
  sources: "Sources",
  verification: {
    read: "read in the source",
    memory: "from memory, to be verified",
    "common practice": "common practice",
  },
  firstSteps: {
    title: "Two measurements first",
    steps: [
      {
        title: "Length",
        text: "Child flat on the back, legs straight. Tape on the bed beside the child, from the crown to the heel, not the toes. In centimetres.",
      },
      {
        title: "Arm",
        text: "Bare upper arm, halfway between the tip of the shoulder and the elbow, hanging relaxed. Tape snug on the skin, not indenting it. In millimetres.",
      },
    ],
    end: "Weight and doses appear as you type. Length alone gives a weight too, with a wider range. Nothing leaves this device.",
  },
  versions: ({ software, model, formulary, formularySigned }: ChildReport["versions"]): string =>
    `Steelyard ${software}, body model ${model}, formulary ${formulary} (${formularySigned ? "signed" : "draft, not signed"}), not calibrated for this site.`,
  spoken: ({
    total,
    range,
    ideal,
    doses,
  }: {
    total: string;
    range: string;
    ideal: string | undefined;
    doses: number;
  }): string =>
    `Total weight ${total}, 95 % range ${range}.${ideal === undefined ? "" : ` Ideal weight ${ideal}.`} ${doses} doses.`,
  offlineReady: "Ready to work without a network.",
  updateWaits: "A newer version is ready and starts when the page is next opened.",
} as const;
