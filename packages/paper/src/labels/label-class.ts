import { type DoseLine, medicineIdOf } from "@steelyard/core/dosing";
import type { Box, Colour, Group, Item } from "../drawing/item.ts";
import { faint, paperWhite } from "../drawing/palette.ts";
import { group } from "../drawing/shapes.ts";

/** The classes of ISO 26825 that have a colour. */
export type LabelClass =
  | "induction"
  | "benzodiazepine"
  | "benzodiazepine-antagonist"
  | "relaxant"
  | "relaxant-antagonist"
  | "opioid"
  | "opioid-antagonist"
  | "vasopressor"
  | "hypotensive"
  | "local-anaesthetic"
  | "anticholinergic"
  | "antiemetic";

/**
 * A colour near the Pantone that the standard names (yellow, orange 151, red 805, blue 297, violet 256, grey 401, green 367, salmon 156); an
 * antagonist has white stripes over that of its class.
 *
 * @source iso-26825
 */
const colours: Readonly<Record<LabelClass, { readonly fill: Colour; readonly striped?: true }>> = {
  induction: { fill: "#ffed00" },
  benzodiazepine: { fill: "#ff8200" },
  "benzodiazepine-antagonist": { fill: "#ff8200", striped: true },
  relaxant: { fill: "#ff7276" },
  "relaxant-antagonist": { fill: "#ff7276", striped: true },
  opioid: { fill: "#71c5e8" },
  "opioid-antagonist": { fill: "#71c5e8", striped: true },
  vasopressor: { fill: "#d6bfdd" },
  hypotensive: { fill: "#d6bfdd", striped: true },
  "local-anaesthetic": { fill: "#afa9a0" },
  anticholinergic: { fill: "#a4d65e" },
  antiemetic: { fill: "#efbe7d" },
};

/**
 * The class of each medicine of the draft, by its id; one that is in no class of the standard has no colour.
 *
 * @source iso-26825
 */
const classOf: ReadonlyMap<string, LabelClass> = new Map<string, LabelClass>([
  ...["propofol", "thiopental", "etomidate", "ketamine"].map((id) => [id, "induction"] as const),
  ...["midazolam", "diazepam", "lorazepam"].map((id) => [id, "benzodiazepine"] as const),
  ["flumazenil", "benzodiazepine-antagonist"],
  ...["suxamethonium", "rocuronium", "vecuronium", "atracurium"].map((id) => [id, "relaxant"] as const),
  ...["neostigmine", "sugammadex"].map((id) => [id, "relaxant-antagonist"] as const),
  ...["morphine", "fentanyl"].map((id) => [id, "opioid"] as const),
  ["naloxone", "opioid-antagonist"],
  ...["adrenaline", "noradrenaline", "phenylephrine", "metaraminol", "vasopressin"].map(
    (id) => [id, "vasopressor"] as const,
  ),
  ...["glyceryl-trinitrate", "sodium-nitroprusside", "hydralazine"].map((id) => [id, "hypotensive"] as const),
  ...["atropine", "glycopyrronium"].map((id) => [id, "anticholinergic"] as const),
  ["ondansetron", "antiemetic"],
]);

/** The class of a dose: that of its medicine, but lidocaine is a local anaesthetic only where it is given for pain. */
export function labelClassOf({ id, problem }: Pick<DoseLine, "id" | "problem">): LabelClass | undefined {
  const medicine = medicineIdOf(id);
  if (medicine === "lidocaine") return problem === "pain" ? "local-anaesthetic" : undefined;
  return classOf.get(medicine);
}

/** How wide the colour stands at the left of a label, mm: the words stay black on white beside it. */
export const classBandMm = 5;

/** The colour of a class down the left side of a label. */
export function drawClassBand(own: LabelClass, { xMm, yMm, heightMm }: Box): Group {
  const { fill, striped } = colours[own];
  const items: Item[] = [
    {
      kind: "rectangle",
      xMm,
      yMm,
      widthMm: classBandMm,
      heightMm,
      fill,
      stroke: { colour: faint, widthMm: 0.1 },
    },
  ];
  // As high as they are far apart, rising from left to right.
  for (let top = yMm + classBandMm; striped && top + classBandMm / 2 <= yMm + heightMm; top += classBandMm) {
    const right = xMm + classBandMm;
    const next = classBandMm / 2;
    items.push({
      kind: "path",
      fill: paperWhite,
      segments: [
        ["M", xMm, top],
        ["L", right, top - classBandMm],
        ["L", right, top - classBandMm + next],
        ["L", xMm, top + next],
        ["Z"],
      ],
    });
  }
  return group(items);
}
