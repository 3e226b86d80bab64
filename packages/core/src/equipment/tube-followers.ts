import {
  atMost,
  type ChildSize,
  COMMON_PRACTICE,
  cite,
  type LookupStep,
  linear,
  NEWBORN_MONTHS,
  nearestOf,
} from "../lookup/index.ts";
import type { EquipmentChoice, EquipmentItem, EquipmentLine } from "./equipment-line.ts";
import { gapLine, itemLine } from "./item-line.ts";
import { tubeChoices } from "./tracheal-tube.ts";

/** A catheter whose French size is a multiple of the internal diameter of the tracheal tube in mm. */
interface FollowerRule {
  readonly item: EquipmentItem;
  readonly times: number;
  /** Sizes that are made, ascending, Fr. */
  readonly sizesFr: readonly number[];
  readonly to: "nearest" | "below";
  /** The suction catheter goes down the tube that is placed; the others follow the uncuffed size, as a measure of the child. */
  readonly tube: "placed" | "uncuffed";
}

/** @source common-practice */
const SUCTION: FollowerRule = {
  item: "suction-catheter",
  times: 2,
  sizesFr: [5, 6, 8, 10, 12, 14],
  to: "below",
  tube: "placed",
};
const GASTRIC: FollowerRule = {
  item: "gastric-tube",
  times: 2,
  sizesFr: [5, 6, 8, 10, 12, 14, 16, 18],
  to: "nearest",
  tube: "uncuffed",
};
const CHEST: FollowerRule = {
  item: "chest-drain",
  times: 4,
  sizesFr: [8, 10, 12, 14, 16, 20, 24, 28, 32],
  to: "nearest",
  tube: "uncuffed",
};
const URINARY: FollowerRule = {
  item: "urinary-catheter",
  times: 2,
  sizesFr: [6, 8, 10, 12, 14],
  to: "nearest",
  tube: "uncuffed",
};

/** Suction catheter, gastric tube, chest drain and urinary catheter, Fr. */
export function tubeFollowers(child: ChildSize): readonly EquipmentLine[] {
  return [
    followerLine(child, SUCTION),
    followerLine(child, GASTRIC),
    followerLine(child, CHEST),
    urinaryCatheter(child),
  ];
}

function urinaryCatheter(child: ChildSize): EquipmentLine {
  const { age } = child;
  if (age?.from !== "age" || age.ageMonths >= NEWBORN_MONTHS) return followerLine(child, URINARY);
  const step: LookupStep = { step: "band", by: "age", value: age.ageMonths, low: 0, high: NEWBORN_MONTHS };
  const choice = (value: number): EquipmentChoice => ({
    value,
    unit: "Fr",
    rests: ["age"],
    working: [step],
    sources: cite([{ ...COMMON_PRACTICE, locator: "3.5 to 5 Fr in newborns" }]),
  });
  return itemLine({ item: "urinary-catheter" }, child, [choice(5), choice(3.5)]);
}

function followerLine(
  child: ChildSize,
  { item, times, sizesFr, to, tube: which }: FollowerRule,
): EquipmentLine {
  const source = { ...COMMON_PRACTICE, locator: `${times} x internal diameter` };
  const cuffed = which === "placed" ? tubeChoices(child, "cuffed") : [];
  const [tube] = [...cuffed, ...tubeChoices(child, "uncuffed")];
  if (tube === undefined) return gapLine({ item }, { type: "needs", oneOf: ["age", "length"] }, [source]);
  const step = linear({ by: "tube", times, unit: "Fr" }, tube.value);
  const value = to === "below" ? atMost(sizesFr, step.result) : nearestOf(sizesFr, step.result);
  const sizing: LookupStep[] =
    value === step.result ? [] : [{ step: "size", exact: step.result, to, result: value, unit: "Fr" }];
  return itemLine({ item }, child, [
    { value, unit: "Fr", rests: tube.rests, working: [step, ...sizing], sources: cite([source]) },
  ]);
}
