import type { Formulary, InfusionAgeBand, SimpleRule, WeightBand } from "@steelyard/core/dosing";
import { convertDose, formatNumber, isConvertible } from "@steelyard/core/units";
import { everyOption, type OptionPlace } from "../checks/place.ts";
import type { FormularyFault } from "../formulary-fault.ts";
import { plainDose } from "./readable-value.ts";

/** A jump of the dose at an edge by more than this is shown to the reviewer. */
const STEP_SHARE = 0.2;

/**
 * What a reviewer should look at although it is no fault: jumps of the dose from one band to the next.
 *
 * A jump is the dose at the edge against the dose just under it, by weight in bands of weight, per kg or as the fixed
 * amount in bands of age; `stepShare` is the share from which it is shown, 0.2 where absent.
 *
 * ```ts
 * import { draftFormulary } from "@steelyard/formulary";
 * import { reviewFormulary } from "@steelyard/formulary/ownership";
 * import assert from "node:assert/strict";
 * assert.deepEqual(reviewFormulary({ ...draftFormulary, medicines: [] }), []);
 * ```
 */
export function reviewFormulary(
  formulary: Formulary,
  { stepShare = STEP_SHARE }: { readonly stepShare?: number } = {},
): FormularyFault[] {
  return everyOption(formulary).flatMap((optionPlace) => steps(optionPlace, stepShare));
}

function steps({ option: { rule }, place }: OptionPlace, stepShare: number): FormularyFault[] {
  if (rule.kind === "weight-bands") {
    return pairs(rule.bands).flatMap(([below, above]) => {
      const edgeKg = above.lowKg;
      const message = stepBetween(
        { rule: below.rule, kg: edgeKg },
        { rule: above.rule, kg: edgeKg },
        `${formatNumber(edgeKg)} kg`,
        stepShare,
      );
      return message === undefined ? [] : [{ place, message }];
    });
  }
  if (rule.kind === "infusion-age-bands") {
    return pairs(rule.bands).flatMap(([below, above]) => {
      const start = ({ rule: { startPerKg, unit, basis } }: InfusionAgeBand): Side => ({
        rule: { kind: "per-kg", amountPerKg: startPerKg, unit, basis },
        kg: 1,
      });
      const message = stepBetween(start(below), start(above), ageInWords(above.lowMonths), stepShare);
      return message === undefined ? [] : [{ place, message: `the start ${message}` }];
    });
  }
  if (rule.kind === "age-bands") {
    return pairs(rule.bands).flatMap(([below, above]) => {
      // A rule per kg is compared per kg: the child on either side of the birthday weighs the same.
      if (below.rule.kind !== above.rule.kind) return [];
      const message = stepBetween(
        { rule: below.rule, kg: 1 },
        { rule: above.rule, kg: 1 },
        ageInWords(above.lowMonths),
        stepShare,
      );
      return message === undefined ? [] : [{ place, message }];
    });
  }
  return [];
}

/** "18 months", "6 years". */
function ageInWords(months: number): string {
  return months >= 24 && months % 12 === 0
    ? `${formatNumber(months / 12)} years`
    : `${formatNumber(months)} months`;
}

interface Side {
  readonly rule: WeightBand["rule"];
  readonly kg: number;
}

function stepBetween(below: Side, above: Side, edge: string, stepShare: number): string | undefined {
  const before = doseOf(below);
  const after = doseOf(above);
  if (before === undefined || after === undefined || !isConvertible(before.unit, after.unit))
    return undefined;
  const amount = convertDose({ dose: after, to: before.unit }).amount;
  const share = amount / before.amount - 1;
  if (Math.abs(share) <= stepShare + 1e-9) return undefined;
  const per = below.kg === 1 && below.rule.kind === "per-kg" ? ({ per: "kg" } as const) : {};
  const percent = `${formatNumber(Math.round(Math.abs(share) * 100))} % ${share < 0 ? "less" : "more"}`;
  return `steps from ${plainDose({ ...before, ...per })} just under ${edge} to ${plainDose({ ...after, ...per })} at ${edge}, ${percent}`;
}

function doseOf({ rule, kg }: Side): { amount: number; unit: SimpleRule["unit"] } | undefined {
  if (rule.kind === "per-m2") return undefined;
  if (rule.kind === "fixed") return { amount: rule.amount, unit: rule.unit };
  const amount = rule.amountPerKg * kg;
  const maximum = rule.maximum && convertDose({ dose: rule.maximum, to: rule.unit }).amount;
  const isHeld = kg > 1 && maximum !== undefined && maximum < amount;
  return { amount: isHeld ? maximum : amount, unit: rule.unit };
}

function pairs<T>(list: readonly T[]): [T, T][] {
  return list.slice(1).map((item, index) => [list[index] as T, item]);
}
