import {
  ageParts,
  type Band,
  bandAt,
  type ChildSize,
  COMMON_PRACTICE,
  cite,
  NEWBORN_MONTHS,
} from "../lookup/index.ts";
import type { EquipmentChoice, EquipmentLine } from "./equipment-line.ts";
import { gapLine, itemLine } from "./item-line.ts";

type Blade = Required<Pick<EquipmentChoice, "shape">> & { readonly size: number };

/** The blade of each age, and the one to have beside it. @source common-practice */
const BLADES: readonly Band<readonly [Blade, ...Blade[]]>[] = [
  {
    low: 0,
    high: NEWBORN_MONTHS,
    value: [
      { size: 0, shape: "straight" },
      { size: 1, shape: "straight" },
    ],
  },
  { low: NEWBORN_MONTHS, high: 24, value: [{ size: 1, shape: "straight" }] },
  { low: 24, high: 96, value: [{ size: 2, shape: "curved" }] },
  {
    low: 96,
    high: 120,
    value: [
      { size: 3, shape: "curved" },
      { size: 2, shape: "curved" },
    ],
  },
  { low: 120, value: [{ size: 3, shape: "curved" }] },
];

/** Laryngoscope blade by age: straight to 2 years, curved after. */
export function laryngoscopeBlade(child: ChildSize): EquipmentLine {
  const head = { item: "laryngoscope-blade" } as const;
  const { age } = child;
  const band = age && bandAt(BLADES, "age", age.ageMonths);
  if (age === undefined || band === undefined) {
    return gapLine(head, { type: "needs", oneOf: ["age", "length"] }, [COMMON_PRACTICE]);
  }
  const { rests, working } = ageParts(age);
  const choice = ({ size, shape }: Blade): EquipmentChoice => ({
    value: size,
    unit: "size",
    shape,
    rests,
    working: [...working, band.step],
    sources: cite([COMMON_PRACTICE]),
  });
  const [first, ...others] = band.value;
  return itemLine(head, child, [choice(first), ...others.map(choice)]);
}
