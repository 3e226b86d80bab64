import { conversionFactor } from "../units/convert-dose.ts";
import type { Dose } from "../units/index.ts";
import {
  compare,
  divide,
  exactly,
  floorToMultiple,
  fraction,
  multiply,
  type Rational,
  roundToMultiple,
  toNumber,
} from "../units/rational.ts";
import type { ChildFacts } from "./child-facts.ts";
import { isWithin } from "./child-facts.ts";
import type { ChosenBasis } from "./choose-basis.ts";
import type { Means } from "./deliver.ts";
import { drawUp } from "./draw-up.ts";
import { mlPerHPerDose } from "./infusion-rate.ts";
import { labelOfPrepared } from "./label-of.ts";
import type { LimitedDose } from "./limited-dose.ts";
import { errorPercent } from "./measure-volume.ts";
import type { InfusionRule } from "./rule.ts";
import type { FirstHour, PreparedInfusion } from "./sheet-line.ts";
import type { Preparation } from "./strength.ts";
import { PUMP_STEPS } from "./syringes.ts";
import type { Concentration, WorkingStep } from "./working-step.ts";

/** The preparations for this child's band of weight: fixed concentrations first, then the syringe of its own. */
export function suitablePreparations(preparations: readonly Preparation[], child: ChildFacts): Preparation[] {
  const suitable = preparations.filter(({ lowKg, highKg }) => isWithin(child.kgByBasis.total, lowKg, highKg));
  return [
    ...suitable.filter(({ kind }) => kind === "fixed"),
    ...suitable.filter(({ kind }) => kind === "per-kg"),
  ];
}

/** The syringes by weight that are not for this child, as steps; a fixed concentration has its heir in the next band. */
export function preparationsLeftOut(
  preparations: readonly Preparation[],
  { kgByBasis: { total } }: ChildFacts,
): WorkingStep[] {
  return preparations.flatMap((preparation) => {
    const { kind, unit, totalMl, lowKg, highKg } = preparation;
    if (kind === "fixed" || isWithin(total, lowKg, highKg)) return [];
    return [
      {
        step: "preparation-left-out",
        perKg: { amount: preparation.amountPerKg, unit, per: "kg" },
        totalMl,
        kg: toNumber(total),
        ...(lowKg !== undefined && { lowKg }),
        ...(highKg !== undefined && { highKg }),
      },
    ];
  });
}

/** The means of an infusion, with the fluid this child needs in one hour. */
export interface InfusionMeans extends Means {
  readonly maintenanceMlPerH: Rational;
}

/** The syringe made up, and the rates that give the start and the ends of the range. */
export function prepareInfusion({
  rule,
  chosen,
  preparation,
  means,
}: {
  readonly rule: InfusionRule;
  readonly chosen: ChosenBasis;
  readonly preparation: Preparation;
  readonly means: InfusionMeans;
}): PreparedInfusion {
  const { kg } = chosen;
  const amount =
    preparation.kind === "fixed"
      ? exactly(preparation.amount)
      : multiply(exactly(preparation.amountPerKg), kg);
  const { unit, totalMl, diluent } = preparation;
  // In the unit of the dose, so that rate and concentration read together: 60 micrograms/mL, not 0.06 mg/mL.
  const amountPerMl = multiply(
    divide(amount, exactly(totalMl)),
    conversionFactor({ from: unit, to: rule.unit }),
  );
  const concentration: Concentration = { amountPerMl: toNumber(amountPerMl), unit: rule.unit };
  const factor = mlPerHPerDose(rule.per, { kg, amountPerMl });
  const capPerKg = highestPerKg(rule, kg);
  const highest = multiply(lesser(exactly(rule.highPerKg), capPerKg), factor);
  const startPerKg = lesser(exactly(rule.startPerKg), capPerKg);
  const exactRate = multiply(startPerKg, factor);
  const rate = pumpRate(exactRate, highest);
  const total: Dose = { amount: toNumber(amount), unit };
  const { per } = rule;
  const firstHour = firstHourOf(rate, means.maintenanceMlPerH);

  const working: WorkingStep[] = [
    {
      step: "preparation",
      kind: preparation.kind,
      amount: total,
      ...(preparation.kind === "per-kg" && {
        perKg: { amount: preparation.amountPerKg, unit, per: "kg" as const },
        kg: toNumber(kg),
      }),
      totalMl,
      diluent,
      concentration,
    },
    ...drawnForPreparation({ amount, unit, of: rule.expressedAs }, means),
    {
      step: "rate",
      perKg: { amount: toNumber(startPerKg), unit: rule.unit, per: `kg/${per}` },
      per,
      basis: chosen.basis,
      kg: toNumber(kg),
      concentration,
      exactMlPerH: toNumber(exactRate),
      mlPerH: toNumber(rate),
      errorPercent: errorPercent({ exact: exactRate, rounded: rate }),
    },
    { step: "first-hour", ...firstHour },
  ];
  return {
    id: preparation.id,
    kind: preparation.kind,
    amount: total,
    totalMl,
    diluent,
    concentration: labelOfPrepared(concentration),
    mlPerH: toNumber(rate),
    lowMlPerH: toNumber(pumpRate(lesser(multiply(exactly(rule.lowPerKg), factor), highest), highest)),
    highMlPerH: toNumber(pumpRate(highest, highest)),
    dosePerMlPerH: {
      amount: toNumber(divide({ numerator: 1, denominator: 1 }, factor)),
      unit: rule.unit,
      per: `kg/${per}`,
    },
    lastsH: toNumber(floorToMultiple(divide(exactly(totalMl), rate), fraction(1, 10))),
    firstHour,
    working,
  };
}

/** The most per kg that the maximum of the rule leaves to this child; absent without one. */
export function highestPerKg({ maximum, unit }: InfusionRule, kg: Rational): Rational | undefined {
  if (maximum === undefined) return undefined;
  return divide(multiply(exactly(maximum.amount), conversionFactor({ from: maximum.unit, to: unit })), kg);
}

export function lesser(a: Rational, b: Rational | undefined): Rational {
  return b !== undefined && compare(b, a) < 0 ? b : a;
}

/** What runs in the first hour, and its share of the hour's maintenance in percent, to one decimal. */
function firstHourOf(mlPerH: Rational, maintenanceMlPerH: Rational): FirstHour {
  const share = multiply(divide(mlPerH, maintenanceMlPerH), fraction(100, 1));
  return {
    ml: toNumber(mlPerH),
    allowanceMl: toNumber(maintenanceMlPerH),
    sharePercent: toNumber(roundToMultiple(share, fraction(1, 10))),
  };
}

/** How much of the strength at hand goes into the syringe; nothing is said where the formulary names no strength. */
function drawnForPreparation(
  {
    amount,
    unit,
    of,
  }: { readonly amount: Rational; readonly unit: Dose["unit"]; readonly of: string | undefined },
  means: Means,
): readonly WorkingStep[] {
  const { strengths, syringes } = means;
  if (strengths.length === 0) return [];
  const kg = fraction(1, 1);
  const limited: LimitedDose = {
    basis: "total",
    kg,
    amount,
    unit,
    ...(of !== undefined && { of }),
    steps: [],
    warnings: [],
  };
  return drawUp({ limited, strengths, syringes }).steps;
}

/** To the steps of a pump, never past the highest rate of the range where there is one and never to a standstill. */
export function pumpRate(exact: Rational, highest?: Rational): Rational {
  const isSlow = compare(exact, { numerator: 1, denominator: 1 }) < 0;
  const step = exactly(isSlow ? PUMP_STEPS.below1MlPerH : PUMP_STEPS.from1MlPerH);
  const nearest = roundToMultiple(exact, step);
  const rate =
    highest !== undefined && compare(nearest, highest) > 0 ? floorToMultiple(exact, step) : nearest;
  return rate.numerator > 0 ? rate : step;
}
