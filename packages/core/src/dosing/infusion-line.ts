import { ok, type Result } from "../result.ts";
import { toNumber } from "../units/rational.ts";
import { chooseBasis } from "./choose-basis.ts";
import type { DosingWarning, Unavailable } from "./dosing-warning.ts";
import type { LineTask } from "./line-task.ts";
import { prepareInfusion, suitablePreparations } from "./prepare-infusion.ts";
import type { InfusionRule } from "./rule.ts";
import type { DoseLine, PreparedInfusion } from "./sheet-line.ts";
import { ROUNDING_TOLERANCE_PERCENT } from "./syringes.ts";

export interface InfusionLineTask extends LineTask {
  readonly rule: InfusionRule;
  readonly warnings: readonly DosingWarning[];
}

/** A dose that runs: the syringe made up, and the rate that starts it. */
export function infusionLine(task: InfusionLineTask): Result<DoseLine, Unavailable> {
  const { head, rule, child, means, use } = task;
  const chosen = chooseBasis(rule.basis, child);
  if (!chosen.ok) return chosen;
  const preparations = suitablePreparations(use.preparations ?? [], child).map((preparation) =>
    prepareInfusion({ rule, chosen: chosen.value, preparation, means }),
  );
  const first = preparations[0];
  const { basis, kg, steps, warnings } = chosen.value;
  return ok({
    ...head,
    basis,
    basisKg: toNumber(kg),
    dose: { amount: rule.startPerKg, unit: rule.unit, per: `kg/${rule.per}` },
    ...(first && { rate: { mlPerH: first.mlPerH, concentration: first.concentration } }),
    preparations,
    further: [],
    robustnessOmitted: "titrated",
    working: [...steps, ...(first?.working ?? [])],
    warnings: [...task.warnings, ...warnings, ...rateRounded(first)],
  });
}

function rateRounded(prepared: PreparedInfusion | undefined): DosingWarning[] {
  return (prepared?.working ?? []).flatMap((step) => {
    if (step.step !== "rate" || step.errorPercent === 0) return [];
    const { errorPercent } = step;
    const aboveTolerance = Math.abs(errorPercent) > ROUNDING_TOLERANCE_PERCENT;
    return [{ type: "rounded" as const, errorPercent, aboveTolerance }];
  });
}
