import {
  ageParts,
  type ChildSize,
  COMMON_PRACTICE,
  cite,
  type LinearRule,
  type LookupRest,
  type LookupSource,
  type LookupStep,
  type LookupWarning,
  linear,
  yearsOf,
} from "../lookup/index.ts";
import type { EquipmentChoice, EquipmentLine } from "./equipment-line.ts";
import { gapLine, itemLine, withReason } from "./item-line.ts";
import { tubeChoices } from "./tracheal-tube.ts";

const MORGAN: readonly LookupSource[] = [
  { sourceId: "hunyady2008", locator: "0.1 x height + 5", verification: "read" },
  { sourceId: "morgan1982", verification: "memory" },
];
const BY_AGE: LookupSource = {
  sourceId: "tonsillectomy-tube-size",
  locator: "age / 2 + 12",
  verification: "read",
};
const BY_TUBE: LookupSource = { ...COMMON_PRACTICE, locator: "3 x internal diameter, of the uncuffed size" };
const BY_WEIGHT: LookupSource = {
  sourceId: "neonatal-resuscitation-textbook",
  locator: "weight + 6",
  verification: "memory",
};
const NASAL: LookupSource = { ...COMMON_PRACTICE, locator: "age / 2 + 15" };

/** The age rules start here. @source aha-2010-paediatric */
const AGE_RULE_FROM_MONTHS = 24;
/** weight + 6 was made for newborns; in heavier infants it goes too deep and is only listed. @source neonatal-resuscitation-textbook */
const NEWBORN_UNDER_KG = 4;
const INFANT_MONTHS = 12;

/**
 * Depth of an oral tube at the lips, cm.
 *
 * Shown: weight + 6 under 4 kg; else by length, which is measured and fits short and tall children; else by age,
 * else 3 x the tube. All others are listed.
 */
export function oralDepth(child: ChildSize): EquipmentLine {
  const head = { item: "tracheal-tube-depth", kind: "oral" } as const;
  const { age, totalKg } = child;
  const byWeight = isUnder(child, 24) ? [weightDepth(totalKg)] : [];
  const byLength = lengthDepth(child);
  const byAge = ageDepth(child);
  const byTube = tubeDepth(child);
  const [first, ...others] =
    totalKg < NEWBORN_UNDER_KG
      ? withReason([weightDepth(totalKg), ...byLength, ...byTube], "under-4-kg")
      : withReason(
          [...byLength, ...byAge, ...byTube, ...byWeight],
          byLength.length > 0 ? "length-measured" : undefined,
        );
  if (first === undefined) return gapLine(head, { type: "needs", oneOf: ["length", "age"] }, MORGAN);
  const isInfant = age !== undefined && age.ageMonths < INFANT_MONTHS;
  const warnings: LookupWarning[] =
    isInfant && first.rests.includes("length") ? [{ type: "deep-in-infants" }] : [];
  return itemLine(head, child, [first, ...others], {
    notes: ["confirm-position"],
    warnings,
    differBeyond: 1,
  });
}

/** Depth of a nasal tube at the nostril, cm. */
export function nasalDepth(child: ChildSize): EquipmentLine {
  const head = { item: "tracheal-tube-depth", kind: "nasal" } as const;
  const { age } = child;
  if (age === undefined) return gapLine(head, { type: "needs", oneOf: ["age", "length"] }, [NASAL]);
  if (age.ageMonths < AGE_RULE_FROM_MONTHS) {
    const low = AGE_RULE_FROM_MONTHS;
    return gapLine(head, { type: "outside-rule", by: "age", value: age.ageMonths, low }, [NASAL]);
  }
  const { rests, working } = ageParts(age);
  const rule = { by: "age", over: 2, plus: 15, unit: "cm" } as const;
  return itemLine(head, child, [depth(rule, yearsOf(age), rests, [NASAL], working)]);
}

function isUnder({ age }: ChildSize, months: number): boolean {
  return age !== undefined && age.ageMonths < months;
}

function weightDepth(totalKg: number): EquipmentChoice {
  return depth({ by: "total-weight", plus: 6, unit: "cm" }, totalKg, ["total-weight"], [BY_WEIGHT]);
}

function lengthDepth({ lengthCm }: ChildSize): EquipmentChoice[] {
  if (lengthCm === undefined) return [];
  return [depth({ by: "length", over: 10, plus: 5, unit: "cm" }, lengthCm, ["length"], MORGAN)];
}

function ageDepth({ age }: ChildSize): EquipmentChoice[] {
  if (age === undefined || age.ageMonths < AGE_RULE_FROM_MONTHS) return [];
  const { rests, working } = ageParts(age);
  return [depth({ by: "age", over: 2, plus: 12, unit: "cm" }, yearsOf(age), rests, [BY_AGE], working)];
}

/** The rule comes from uncuffed tubes; a cuffed one is half a size smaller, not 1.5 cm shorter. */
function tubeDepth(child: ChildSize): EquipmentChoice[] {
  const [tube] = tubeChoices(child, "uncuffed");
  if (tube === undefined) return [];
  const rule = { by: "tube", times: 3, unit: "cm" } as const;
  return [depth(rule, tube.value, tube.rests, [BY_TUBE])];
}

function depth(
  rule: LinearRule,
  value: number,
  rests: readonly LookupRest[],
  sources: readonly LookupSource[],
  before: readonly LookupStep[] = [],
): EquipmentChoice {
  const step = linear(rule, value);
  // Tubes are marked every centimetre and read to the half.
  const result = Math.ceil(step.result * 2 - 0.5) / 2;
  const rounding: LookupStep[] =
    result === step.result ? [] : [{ step: "size", exact: step.result, to: "nearest", result, unit: "cm" }];
  return {
    value: result,
    unit: "cm",
    rests,
    working: [...before, step, ...rounding],
    sources: cite(sources),
  };
}
