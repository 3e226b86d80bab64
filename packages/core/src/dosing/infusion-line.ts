import { ok, type Result } from "../result.ts";
import { compare, exactly, fraction, multiply, type Rational, toNumber } from "../units/rational.ts";
import type { ChildFacts } from "./child-facts.ts";
import { type ChosenBasis, chooseBasis } from "./choose-basis.ts";
import type { DosingWarning, Unavailable } from "./dosing-warning.ts";
import type { LineTask } from "./line-task.ts";
import { HOURLY_MAINTENANCE } from "./maintenance-fluid.ts";
import { errorPercent } from "./measure-volume.ts";
import {
  highestPerKg,
  lesser,
  preparationsLeftOut,
  prepareInfusion,
  pumpRate,
  suitablePreparations,
} from "./prepare-infusion.ts";
import type { InfusionRule, TieredRateRule } from "./rule.ts";
import type { DoseLine, PreparedInfusion } from "./sheet-line.ts";
import { ROUNDING_TOLERANCE_PERCENT } from "./syringes.ts";
import { tieredAmount } from "./tiered-amount.ts";
import type { WorkingStep } from "./working-step.ts";

export interface InfusionLineTask extends LineTask {
  /** The rule for this child, bands resolved. */
  readonly rule: InfusionRule | TieredRateRule;
  readonly steps: readonly WorkingStep[];
  readonly warnings: readonly DosingWarning[];
}

/** A dose that runs: the syringe made up, or the fluid as it is, and the rate that starts it. */
export function infusionLine(task: InfusionLineTask): Result<DoseLine, Unavailable> {
  const chosen = chooseBasis(task.rule.basis, task.child);
  if (!chosen.ok) return chosen;
  const { rule } = task;
  if (rule.kind === "tiered-rate") return ok(tieredLine(task, rule, chosen.value));
  return ok(
    rule.unit === "mL" ? fluidLine(task, rule, chosen.value) : preparedLine(task, rule, chosen.value),
  );
}

function preparedLine(task: InfusionLineTask, rule: InfusionRule, chosen: ChosenBasis): DoseLine {
  const { head, use, child } = task;
  const { basis, kg, steps, warnings } = chosen;
  const means = { ...task.means, maintenanceMlPerH: maintenanceOf(child) };
  const preparations = suitablePreparations(use.preparations ?? [], child).map((preparation) =>
    prepareInfusion({ rule, chosen, preparation, means }),
  );
  const first = preparations[0];
  const leftOut = preparationsLeftOut(use.preparations ?? [], child);
  const start = startOf(rule, kg);
  return {
    ...head,
    basis,
    basisKg: toNumber(kg),
    dose: { amount: toNumber(start.perKg), unit: rule.unit, per: `kg/${rule.per}` },
    ...(rule.expressedAs !== undefined && { of: rule.expressedAs }),
    ...(first && { rate: { mlPerH: first.mlPerH, concentration: first.concentration } }),
    preparations,
    ...(start.warnings.length > 0 && { limitedBy: "single-maximum" as const }),
    further: [],
    robustnessOmitted: "titrated",
    working: [...task.steps, ...steps, ...start.steps, ...leftOut, ...(first?.working ?? [])],
    warnings: [
      ...task.warnings,
      ...warnings,
      ...start.warnings,
      ...ratesRounded(first),
      ...fluidLoad(first),
      ...withoutRate(first, child),
    ],
  };
}

/** A fluid by mL/kg/h: nothing is made up. */
function fluidLine(task: InfusionLineTask, rule: InfusionRule, chosen: ChosenBasis): DoseLine {
  const { basis, kg } = chosen;
  const start = startOf(rule, kg);
  const perHour = fraction(rule.per === "min" ? 60 : 1, 1);
  const exactMlPerH = multiply(multiply(start.perKg, kg), perHour);
  const highest = multiply(multiply(lesser(exactly(rule.highPerKg), highestPerKg(rule, kg)), kg), perHour);
  const mlPerH = pumpRate(exactMlPerH, highest);
  const perKg = { amount: toNumber(start.perKg), unit: rule.unit, per: `kg/${rule.per}` } as const;
  const steps: WorkingStep[] = [
    ...start.steps,
    { step: "fluid-rate", perKg, basis, kg: toNumber(kg), mlPerH: toNumber(exactMlPerH) },
  ];
  return {
    ...rateLine(task, chosen, { exactMlPerH, mlPerH, steps, warnings: start.warnings }),
    dose: perKg,
    robustnessOmitted: "titrated",
  };
}

function tieredLine(task: InfusionLineTask, rule: TieredRateRule, chosen: ChosenBasis): DoseLine {
  const { basis, kg } = chosen;
  const { parts, sum } = tieredAmount({ kg, tiers: rule.tiers });
  const maximum = rule.maximum && exactly(rule.maximum.amount);
  const exactMlPerH = lesser(sum, maximum);
  const perHour = (amount: Rational) => ({ amount: toNumber(amount), unit: "mL", per: "h" }) as const;
  const limit = { from: perHour(sum), to: perHour(exactMlPerH) };
  const isLimited = compare(exactMlPerH, sum) < 0;
  const steps: WorkingStep[] = [
    {
      step: "tiers",
      basis,
      parts: parts.map((part) => ({
        kg: toNumber(part.kg),
        perKg: { amount: part.perKg, unit: "mL", per: "kg/h" },
        result: perHour(part.amount),
      })),
      result: perHour(sum),
    },
    ...(isLimited
      ? [{ step: "limit", limit: "single-maximum", from: limit.from, result: limit.to } as const]
      : []),
  ];
  const warnings: DosingWarning[] = isLimited ? [{ type: "limited", by: "single-maximum", ...limit }] : [];
  const mlPerH = pumpRate(exactMlPerH, exactMlPerH);
  return {
    ...rateLine(task, chosen, { exactMlPerH, mlPerH, steps, warnings }),
    dose: perHour(mlPerH),
    robustnessOmitted: "no-accepted-range",
  };
}

/** What fluids by tiers and by mL/kg/h have in common. */
function rateLine(
  { head, means, steps: bandSteps, warnings: before }: InfusionLineTask,
  { basis, kg, steps: basisSteps, warnings: basisWarnings }: ChosenBasis,
  {
    exactMlPerH,
    mlPerH,
    steps,
    warnings,
  }: {
    readonly exactMlPerH: Rational;
    readonly mlPerH: Rational;
    readonly steps: readonly WorkingStep[];
    readonly warnings: readonly DosingWarning[];
  },
): Omit<DoseLine, "dose" | "robustnessOmitted"> {
  const percent = errorPercent({ exact: exactMlPerH, rounded: mlPerH });
  const pumpStep: WorkingStep = {
    step: "pump-step",
    exactMlPerH: toNumber(exactMlPerH),
    mlPerH: toNumber(mlPerH),
    errorPercent: percent,
  };
  return {
    ...head,
    basis,
    basisKg: toNumber(kg),
    rate: { mlPerH: toNumber(mlPerH), concentration: means.medicine.name },
    ...(warnings.length > 0 && { limitedBy: "single-maximum" as const }),
    further: [],
    working: [...bandSteps, ...basisSteps, ...steps, ...(percent === 0 ? [] : [pumpStep])],
    warnings: [...before, ...basisWarnings, ...warnings, ...rounded(percent)],
  };
}

/** The start per kg, held at the maximum of the rule. */
function startOf(
  rule: InfusionRule,
  kg: Rational,
): { perKg: Rational; steps: readonly WorkingStep[]; warnings: readonly DosingWarning[] } {
  const asked = exactly(rule.startPerKg);
  const perKg = lesser(asked, highestPerKg(rule, kg));
  if (compare(perKg, asked) === 0) return { perKg, steps: [], warnings: [] };
  const perTime = (amount: Rational) =>
    ({ amount: toNumber(multiply(amount, kg)), unit: rule.unit, per: rule.per }) as const;
  const [from, to] = [perTime(asked), perTime(perKg)];
  return {
    perKg,
    steps: [{ step: "limit", limit: "single-maximum", from, result: to }],
    warnings: [{ type: "limited", by: "single-maximum", from, to }],
  };
}

/** The maintenance of one hour, mL, on total weight. */
function maintenanceOf(child: ChildFacts): Rational {
  return tieredAmount({ kg: child.kgByBasis.total, tiers: HOURLY_MAINTENANCE }).sum;
}

function withoutRate(prepared: PreparedInfusion | undefined, child: ChildFacts): DosingWarning[] {
  return prepared === undefined ? [{ type: "no-preparation", kg: toNumber(child.kgByBasis.total) }] : [];
}

function fluidLoad(prepared: PreparedInfusion | undefined): DosingWarning[] {
  if (prepared === undefined || prepared.firstHour.ml <= prepared.firstHour.allowanceMl) return [];
  const { ml, allowanceMl } = prepared.firstHour;
  return [{ type: "fluid-load", ml, allowanceMl }];
}

function ratesRounded(prepared: PreparedInfusion | undefined): DosingWarning[] {
  return (prepared?.working ?? []).flatMap((step) =>
    step.step === "rate" ? rounded(step.errorPercent) : [],
  );
}

function rounded(percent: number): DosingWarning[] {
  if (percent === 0) return [];
  const aboveTolerance = Math.abs(percent) > ROUNDING_TOLERANCE_PERCENT;
  return [{ type: "rounded", errorPercent: percent, aboveTolerance }];
}
