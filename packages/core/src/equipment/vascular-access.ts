import {
  ageParts,
  type Band,
  bandAt,
  type ChildSize,
  COMMON_PRACTICE,
  cite,
  type LookupValue,
  NEWBORN_MONTHS,
} from "../lookup/index.ts";
import type { EquipmentChoice, EquipmentLine } from "./equipment-line.ts";
import { gapLine, itemLine } from "./item-line.ts";

/** Gauge of a peripheral cannula: the higher the thinner. @source common-practice */
const GAUGES: readonly Band<LookupValue>[] = [
  { low: 0, high: NEWBORN_MONTHS, value: 24 },
  { low: NEWBORN_MONTHS, high: 12, value: { low: 22, high: 24 } },
  { low: 12, high: 144, value: { low: 20, high: 22 } },
  { low: 144, value: { low: 18, high: 20 } },
];

/** Needle of a powered driver, mm, by total weight in kg. @source common-practice */
const NEEDLES: readonly Band<number>[] = [
  { low: 3, high: 40, value: 15 },
  { low: 40, value: 25 },
];

/** Peripheral cannula by age, G. */
export function cannula(child: ChildSize): EquipmentLine {
  const { age } = child;
  const band = age && bandAt(GAUGES, "age", age.ageMonths);
  if (age === undefined || band === undefined) {
    return gapLine({ item: "cannula" }, { type: "needs", oneOf: ["age", "length"] }, [COMMON_PRACTICE]);
  }
  const { rests, working } = ageParts(age);
  return itemLine({ item: "cannula" }, child, [
    {
      value: band.value,
      unit: "G",
      rests,
      working: [...working, band.step],
      sources: cite([COMMON_PRACTICE]),
    },
  ]);
}

/** Intraosseous needle by total weight, mm; the longer one is listed wherever it may be needed. */
export function intraosseousNeedle(child: ChildSize): EquipmentLine {
  const head = { item: "intraosseous-needle" } as const;
  const { totalKg } = child;
  const band = bandAt(NEEDLES, "total-weight", totalKg);
  if (band === undefined) {
    const unavailable = { type: "outside-rule", by: "total-weight", value: totalKg, low: 3 } as const;
    return gapLine(head, unavailable, [COMMON_PRACTICE]);
  }
  const choice = (value: number): EquipmentChoice => ({
    value,
    unit: "mm",
    rests: ["total-weight"],
    working: [band.step],
    sources: cite([COMMON_PRACTICE]),
  });
  return itemLine(head, child, band.value === 15 ? [choice(15), choice(25)] : [choice(band.value)], {
    notes: ["check-tissue-depth", "intraosseous-site"],
  });
}
