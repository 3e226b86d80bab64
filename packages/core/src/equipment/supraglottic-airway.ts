import { type Band, type ChildSize, cite, type LookupSource, type LookupStep } from "../lookup/index.ts";
import type { EquipmentChoice, EquipmentLine } from "./equipment-line.ts";
import { gapLine, itemLine } from "./item-line.ts";

type Type = "mask-type" | "gel-type";

/** Weight ranges in kg, as printed on the devices; those of the gel type overlap. @source supraglottic-weight-ranges */
const SIZES: Readonly<Record<Type, readonly Band<number>[]>> = {
  "mask-type": [
    { low: 0, high: 5, value: 1 },
    { low: 5, high: 10, value: 1.5 },
    { low: 10, high: 20, value: 2 },
    { low: 20, high: 30, value: 2.5 },
    { low: 30, high: 50, value: 3 },
    { low: 50, high: 70, value: 4 },
    { low: 70, value: 5 },
  ],
  "gel-type": [
    { low: 2, high: 5, value: 1 },
    { low: 5, high: 12, value: 1.5 },
    { low: 10, high: 25, value: 2 },
    { low: 25, high: 35, value: 2.5 },
    { low: 30, high: 60, value: 3 },
    { low: 50, high: 90, value: 4 },
    { low: 90, value: 5 },
  ],
};

const SOURCES: readonly LookupSource[] = [{ sourceId: "supraglottic-weight-ranges", verification: "memory" }];

/**
 * Size of a supraglottic airway by weight: ideal weight, as the airway does not grow with fat; total weight where
 * no ideal weight is known, and beside it where the two give different sizes.
 */
export function supraglotticAirway(child: ChildSize, type: Type): EquipmentLine {
  const head = { item: "supraglottic-airway", kind: type } as const;
  const { totalKg, idealKg } = child;
  const byTotal = fitting(type, totalKg, "total-weight");
  const byIdeal = idealKg === undefined ? [] : fitting(type, idealKg, "ideal-weight");
  const others = byTotal.filter(({ value }) => byIdeal.every((choice) => choice.value !== value));
  const [first, ...rest] = [...byIdeal, ...others];
  if (first === undefined) {
    const [{ low }] = SIZES[type] as readonly [Band<number>];
    return gapLine(head, { type: "outside-rule", by: "total-weight", value: totalKg, low }, SOURCES);
  }
  return itemLine(head, child, [first, ...rest], { notes: ["device-label-first"] });
}

/** Every size whose range holds this weight, the smallest first. */
function fitting(type: Type, kg: number, by: "total-weight" | "ideal-weight"): EquipmentChoice[] {
  return SIZES[type]
    .filter(({ low, high }) => kg >= low && (high === undefined || kg < high))
    .map(({ low, high, value }) => {
      const step: LookupStep = { step: "band", by, value: kg, low, ...(high !== undefined && { high }) };
      return { value, unit: "size", rests: [by], working: [step], sources: cite(SOURCES) };
    });
}
