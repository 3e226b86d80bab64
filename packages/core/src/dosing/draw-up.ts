import { conversionFactor } from "../units/convert-dose.ts";
import { compare, divide, exactly, fraction, multiply, type Rational, toNumber } from "../units/rational.ts";
import type { DosingWarning } from "./dosing-warning.ts";
import { labelOf } from "./label-of.ts";
import type { LimitedDose } from "./limited-dose.ts";
import { type MeasuredVolume, measureVolume } from "./measure-volume.ts";
import type { DrawnVolume } from "./sheet-line.ts";
import type { Strength } from "./strength.ts";
import {
  MEASURABLE_ML,
  ROUNDING_CEILING_PERCENT,
  ROUNDING_TOLERANCE_PERCENT,
  type Syringe,
} from "./syringes.ts";
import type { Concentration, WorkingStep } from "./working-step.ts";

/** What is given in the end. */
export interface Delivered {
  readonly amount: Rational;
  readonly volume?: DrawnVolume;
  /** What it is drawn from, so that a later dose can come from the same syringe. */
  readonly drawnFrom?: DrawnFrom;
  readonly steps: readonly WorkingStep[];
  readonly warnings: readonly DosingWarning[];
}

/** A strength, as it is or diluted. */
export interface DrawnFrom {
  readonly strength: Strength;
  readonly dilution?: { readonly takeMl: number; readonly totalMl: number; readonly diluent: string };
}

/** One way to bring the dose into a syringe. */
interface Draw extends DrawnFrom {
  readonly concentration: Concentration;
  /** Amount per mL in the unit of the dose. */
  readonly perMl: Rational;
  readonly exactMl: Rational;
  readonly measured: MeasuredVolume;
  readonly measurableMl: number;
}

/** One mL made up to these volumes, mL; each fits a usual syringe. @source common-practice */
const DILUTION_TOTALS_ML = [10, 20, 50] as const;

/**
 * The dose in mL of a strength at hand: of the preferred strength if a syringe can measure that within 5 %, else
 * of another strength of the list, else of a dilution, else of whatever comes within 10 %, else not at all.
 *
 * A later dose stays with what the first was drawn from wherever that can measure it: nobody should change the
 * strength between two doses of the same medicine.
 */
export function drawUp({
  limited,
  strengths,
  syringes,
  earlier,
}: {
  readonly limited: LimitedDose;
  readonly strengths: readonly Strength[];
  readonly syringes: readonly Syringe[];
  readonly earlier?: DrawnFrom | undefined;
}): Delivered {
  const again = earlier && drawFrom({ limited, syringes, ...earlier });
  if (again && isMeasurable(again, ROUNDING_TOLERANCE_PERCENT) && isEnough(again)) {
    return delivered({ limited, first: again, chosen: again });
  }
  const draws = strengths.map((strength) => drawFrom({ limited, strength, syringes }));
  const first = draws[0];
  if (first === undefined) throw new TypeError("Cannot draw up a dose as strengths must not be empty");
  const chosen =
    draws.find((draw) => isMeasurable(draw, ROUNDING_TOLERANCE_PERCENT)) ??
    dilutions({ limited, strengths, syringes }).find((draw) =>
      isMeasurable(draw, ROUNDING_TOLERANCE_PERCENT),
    ) ??
    draws.find((draw) => isMeasurable(draw, ROUNDING_CEILING_PERCENT));
  if (chosen === undefined) return notMeasurable(limited, first);
  return delivered({ limited, first, chosen });
}

function drawFrom({
  limited,
  strength,
  syringes,
  dilution,
}: {
  readonly limited: LimitedDose;
  readonly strength: Strength;
  readonly syringes: readonly Syringe[];
  readonly dilution?: Draw["dilution"];
}): Draw {
  const onLabel = exactly(strength.amountPerMl);
  const inSyringe = dilution ? multiply(onLabel, fraction(dilution.takeMl, dilution.totalMl)) : onLabel;
  const perMl = multiply(inSyringe, conversionFactor({ from: strength.unit, to: limited.unit }));
  const exactMl = divide(limited.amount, perMl);
  return {
    strength,
    concentration: { amountPerMl: toNumber(inSyringe), unit: strength.unit },
    perMl,
    exactMl,
    measured: measureVolume({
      exactMl,
      maximumMl: limited.maximum && divide(limited.maximum, perMl),
      minimumMl: limited.minimum && divide(limited.minimum, perMl),
      syringes,
    }),
    // A threshold of the medicine's own is about its stock; what comes out of a dilution has to be measurable only.
    measurableMl: (dilution ? undefined : strength.smallVolumeDilution?.belowMl) ?? MEASURABLE_ML,
    ...(dilution && { dilution }),
  };
}

function dilutions({ limited, strengths, syringes }: Parameters<typeof drawUp>[0]): Draw[] {
  return strengths.flatMap((strength) => {
    const { smallVolumeDilution } = strength;
    if (smallVolumeDilution === undefined) return [];
    return DILUTION_TOTALS_ML.map((totalMl) =>
      drawFrom({
        limited,
        strength,
        syringes,
        dilution: { takeMl: 1, totalMl, diluent: smallVolumeDilution.diluent },
      }),
    );
  });
}

function isMeasurable({ exactMl, measured, measurableMl }: Draw, tolerancePercent: number): boolean {
  return compare(exactMl, exactly(measurableMl)) >= 0 && Math.abs(measured.errorPercent) <= tolerancePercent;
}

/** Whether one dilution holds the whole dose. */
function isEnough({ exactMl, dilution }: Draw): boolean {
  return dilution === undefined || compare(exactMl, exactly(dilution.totalMl)) <= 0;
}

function delivered({
  limited,
  first,
  chosen,
}: {
  readonly limited: LimitedDose;
  readonly first: Draw;
  readonly chosen: Draw;
}): Delivered {
  const { unit } = limited;
  const { ml, errorPercent, ...marks } = chosen.measured;
  const amount = multiply(ml, chosen.perMl);
  const dose = { amount: toNumber(limited.amount), unit };
  const drawnMl = toNumber(ml);
  const { concentration: strength, dilution } = chosen;
  const steps: WorkingStep[] = [];
  const warnings: DosingWarning[] = [];
  if (chosen !== first) {
    const change = {
      ml: toNumber(first.exactMl),
      measurableMl: first.measurableMl,
      to: strength,
    };
    steps.push({ step: "volume", dose, strength: first.concentration, ml: change.ml });
    if (dilution) {
      const addMl = dilution.totalMl - dilution.takeMl;
      const from = { amountPerMl: chosen.strength.amountPerMl, unit: chosen.strength.unit };
      steps.push({ step: "dilution", ...change, ...dilution, addMl, from });
      warnings.push({ type: "diluted", measurableMl: change.measurableMl, to: strength });
    } else {
      steps.push({ step: "weaker-strength", ...change, from: first.concentration });
      warnings.push({ type: "weaker-strength", measurableMl: change.measurableMl, to: strength });
    }
  }
  steps.push({ step: "volume", dose, strength, ml: toNumber(chosen.exactMl) });
  if (errorPercent !== 0) {
    steps.push({ step: "rounding", exactMl: toNumber(chosen.exactMl), ml: drawnMl, ...marks, errorPercent });
    steps.push({ step: "drawn-up", ml: drawnMl, strength, result: { amount: toNumber(amount), unit } });
    const aboveTolerance = Math.abs(errorPercent) > ROUNDING_TOLERANCE_PERCENT;
    warnings.push({ type: "rounded", errorPercent, aboveTolerance });
  }
  return {
    amount,
    drawnFrom: { strength: chosen.strength, ...(dilution && { dilution }) },
    volume: {
      ml: drawnMl,
      strength: labelOf(strength),
      ...(marks.syringeMl !== undefined && { syringeMl: marks.syringeMl }),
      ...(dilution && {
        dilution: {
          strength: labelOf(chosen.strength),
          takeMl: dilution.takeMl,
          addMl: dilution.totalMl - dilution.takeMl,
          diluent: dilution.diluent,
        },
      }),
    },
    steps,
    warnings,
  };
}

function notMeasurable(limited: LimitedDose, first: Draw): Delivered {
  const ml = toNumber(first.exactMl);
  const dose = { amount: toNumber(limited.amount), unit: limited.unit };
  return {
    amount: limited.amount,
    steps: [{ step: "volume", dose, strength: first.concentration, ml }],
    warnings: [{ type: "not-measurable", ml }],
  };
}
