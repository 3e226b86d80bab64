import { type ChildSize, cite, type LookupSource } from "../lookup/index.ts";
import { withoutDrift } from "../units/without-drift.ts";
import type { Bladder, EquipmentChoice, EquipmentLine } from "./equipment-line.ts";
import { gapLine, itemLine } from "./item-line.ts";

/** The bladder is about this wide, in percent of the arm circumference. @source blood-press-1999 */
const WIDTH_PERCENT = 40;

/** Outside this the pressure reads clearly wrong; the gaps of a usual set leave 32 to 50 %. @source common-practice */
const NARROW_PERCENT = 33;
const WIDE_PERCENT = 50;

const SOURCES: readonly LookupSource[] = [
  { sourceId: "blood-press-1999", locator: "width closest to 40 %", verification: "read" },
  { sourceId: "aap-2017-blood-pressure", verification: "memory" },
];

/**
 * Bladders of a usual set of cuffs, width x length in cm; a site lists its own.
 *
 * @source blood-press-1999
 */
export const usualBladders: readonly Bladder[] = [
  { widthCm: 6, lengthCm: 20 },
  { widthCm: 9, lengthCm: 27 },
  { widthCm: 12, lengthCm: 35 },
  { widthCm: 15, lengthCm: 43 },
];

/** The bladder whose width is nearest to 40 % of the arm; of two as near, the wider, as a narrow one hides shock. */
export function bloodPressureCuff(child: ChildSize, bladders: readonly Bladder[]): EquipmentLine {
  const head = { item: "blood-pressure-cuff" } as const;
  const { armMm } = child;
  if (armMm === undefined) return gapLine(head, { type: "needs", oneOf: ["arm"] }, SOURCES);
  const widthCm = withoutDrift((armMm * WIDTH_PERCENT) / 1000);
  const byFit = [...bladders].sort(
    (one, other) =>
      Math.abs(one.widthCm - widthCm) - Math.abs(other.widthCm - widthCm) || other.widthCm - one.widthCm,
  );
  const [nearest] = byFit as [Bladder];
  const percentOfArm = Math.round((nearest.widthCm / armMm) * 1000);
  const choice: EquipmentChoice = {
    value: nearest.widthCm,
    unit: "cm",
    bladderLengthCm: nearest.lengthCm,
    rests: ["arm"],
    working: [
      { step: "share-of-arm", percent: WIDTH_PERCENT, armMm, result: widthCm },
      { step: "size", exact: widthCm, to: "nearest", result: nearest.widthCm, unit: "cm" },
    ],
    sources: cite(SOURCES),
  };
  const isMisfit = percentOfArm < NARROW_PERCENT || percentOfArm > WIDE_PERCENT;
  const reads = percentOfArm < NARROW_PERCENT ? "high" : "low";
  return itemLine(head, child, [choice], {
    warnings: isMisfit ? [{ type: "bladder-misfit", reads, percentOfArm }] : [],
  });
}
