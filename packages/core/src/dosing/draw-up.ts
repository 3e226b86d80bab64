import { conversionFactor } from "../units/convert-dose.ts";
import { compare, divide, exactly, fraction, multiply, type Rational, toNumber } from "../units/rational.ts";
import { type Content, contentOf, contentsOf } from "./contents-of.ts";
import type { DosingWarning } from "./dosing-warning.ts";
import type { VolumeRounding } from "./formulary.ts";
import { labelOf } from "./label-of.ts";
import type { LimitedDose } from "./limited-dose.ts";
import { type MeasuredVolume, measureVolume } from "./measure-volume.ts";
import type { CountedPuffs, DoseEquivalent, DrawnVolume } from "./sheet-line.ts";
import type { LiquidStrength } from "./strength.ts";
import {
  MEASURABLE_ML,
  ROUNDING_CEILING_PERCENT,
  ROUNDING_TOLERANCE_PERCENT,
  type Syringe,
} from "./syringes.ts";
import type { Concentration, WorkingStep } from "./working-step.ts";
import type { Writable } from "./writable.ts";

/** What is given in the end. */
export interface Delivered {
  readonly amount: Rational;
  readonly volume?: DrawnVolume;
  readonly puffs?: CountedPuffs;
  readonly equivalents?: readonly DoseEquivalent[];
  /** What it is drawn from, so that a later dose can come from the same syringe. */
  readonly drawnFrom?: DrawnFrom;
  readonly steps: readonly WorkingStep[];
  readonly warnings: readonly DosingWarning[];
}

/** A strength, as it is or diluted. */
export interface DrawnFrom {
  readonly strength: LiquidStrength;
  readonly dilution?: { readonly takeMl: number; readonly totalMl: number; readonly diluent: string };
}

/** One way to bring the dose into a syringe. */
interface Draw extends DrawnFrom {
  /** What the label says of the substance the dose is of. */
  readonly content: Content;
  readonly concentration: Concentration;
  /** Amount per mL in the unit of the dose. */
  readonly perMl: Rational;
  readonly exactMl: Rational;
  readonly measured: MeasuredVolume;
  readonly measurableMl: number;
}

/** How the label's own count is called beside a dose that is counted as something else. */
const MEDICINE_ITSELF = "the medicine as labelled";

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
  rounding,
  earlier,
}: {
  readonly limited: LimitedDose;
  readonly strengths: readonly LiquidStrength[];
  readonly syringes: readonly Syringe[];
  readonly rounding?: VolumeRounding | undefined;
  readonly earlier?: DrawnFrom | undefined;
}): Delivered {
  const again = earlier && drawFrom({ limited, syringes, rounding, ...earlier });
  if (again && isMeasurable(again, ROUNDING_TOLERANCE_PERCENT) && isEnough(again)) {
    return delivered({ limited, first: again, chosen: again });
  }
  const [preferred] = strengths;
  if (preferred === undefined) throw new TypeError("Cannot draw up a dose as strengths must not be empty");
  const first = drawFrom({ limited, strength: preferred, syringes, rounding });
  if (isMeasurable(first, ROUNDING_TOLERANCE_PERCENT)) return delivered({ limited, first, chosen: first });
  const others = strengths.slice(1).map((strength) => drawFrom({ limited, strength, syringes, rounding }));
  const chosen =
    others.find((draw) => isMeasurable(draw, ROUNDING_TOLERANCE_PERCENT)) ??
    dilutions({ limited, strengths, syringes, rounding }).find((draw) =>
      isMeasurable(draw, ROUNDING_TOLERANCE_PERCENT),
    ) ??
    [first, ...others].find((draw) => isMeasurable(draw, ROUNDING_CEILING_PERCENT));
  if (chosen === undefined) return notMeasurable(limited, first);
  return delivered({ limited, first, chosen });
}

function drawFrom({
  limited,
  strength,
  syringes,
  rounding,
  dilution,
}: {
  readonly limited: LimitedDose;
  readonly strength: LiquidStrength;
  readonly syringes: readonly Syringe[];
  readonly rounding?: VolumeRounding | undefined;
  readonly dilution?: Draw["dilution"];
}): Draw {
  const content = contentOf(strength, limited.of);
  const { unit } = content.concentration;
  const inSyringe = dilution
    ? multiply(content.exactPerMl, fraction(dilution.takeMl, dilution.totalMl))
    : content.exactPerMl;
  const perMl =
    unit === limited.unit
      ? inSyringe
      : multiply(inSyringe, conversionFactor({ from: unit, to: limited.unit }));
  const exactMl = divide(limited.amount, perMl);
  const draw: Writable<Draw> = {
    strength,
    content,
    concentration: dilution ? { amountPerMl: toNumber(inSyringe), unit } : content.concentration,
    perMl,
    exactMl,
    measured: measureVolume({
      exactMl,
      maximumMl: limited.maximum && divide(limited.maximum, perMl),
      minimumMl: limited.minimum && divide(limited.minimum, perMl),
      syringes,
      rounding,
    }),
    // A threshold of the medicine's own is about its stock; what comes out of a dilution has to be measurable only.
    measurableMl: (dilution ? undefined : strength.smallVolumeDilution?.belowMl) ?? MEASURABLE_ML,
  };
  if (dilution) draw.dilution = dilution;
  return draw;
}

function dilutions({ limited, strengths, syringes, rounding }: Parameters<typeof drawUp>[0]): Draw[] {
  return strengths.flatMap((strength) => {
    const { smallVolumeDilution } = strength;
    if (smallVolumeDilution === undefined) return [];
    return DILUTION_TOTALS_ML.map((totalMl) =>
      drawFrom({
        limited,
        strength,
        syringes,
        rounding,
        dilution: { takeMl: 1, totalMl, diluent: smallVolumeDilution.diluent },
      }),
    );
  });
}

function isMeasurable({ exactMl, measured, measurableMl }: Draw, tolerancePercent: number): boolean {
  if (compare(exactMl, exactly(measurableMl)) < 0 || measured.ml.numerator === 0) return false;
  return measured.byRule === true || Math.abs(measured.errorPercent) <= tolerancePercent;
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
      const { concentration: from } = chosen.content;
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
    const byRule = marks.byRule && { byRule: marks.byRule };
    warnings.push({ type: "rounded", errorPercent, aboveTolerance, ...byRule });
  }
  const equivalents = equivalentsOf(chosen, limited);
  for (const { dose: result, of, perMl } of equivalents) {
    steps.push({ step: "equivalent", ml: drawnMl, strength: perMl, of, result });
  }
  const volume: Writable<DrawnVolume> = {
    ml: drawnMl,
    strength: dilution ? labelOf(strength) : chosen.content.label,
  };
  if (marks.syringeMl !== undefined) volume.syringeMl = marks.syringeMl;
  if (dilution) {
    const { takeMl, totalMl, diluent } = dilution;
    volume.dilution = { strength: chosen.content.label, takeMl, addMl: totalMl - takeMl, diluent };
  }
  const drawnFrom: DrawnFrom = dilution
    ? { strength: chosen.strength, dilution }
    : { strength: chosen.strength };
  const result: Writable<Delivered> = { amount, drawnFrom, volume, steps, warnings };
  if (equivalents.length > 0) {
    result.equivalents = equivalents.map(({ dose: same, of }) => ({ dose: same, of }));
  }
  return result;
}

/** The same volume counted as the other substances that the label states. */
function equivalentsOf(
  { strength, dilution, measured }: Draw,
  limited: LimitedDose,
): (DoseEquivalent & { readonly perMl: Concentration })[] {
  const contents = contentsOf(strength);
  if (contents.length === 1) return [];
  return contents
    .filter(({ of }) => of !== limited.of)
    .map(({ concentration: { unit }, exactPerMl, of = MEDICINE_ITSELF }) => {
      const perMl = dilution ? multiply(exactPerMl, fraction(dilution.takeMl, dilution.totalMl)) : exactPerMl;
      return {
        dose: { amount: toNumber(multiply(measured.ml, perMl)), unit },
        of,
        perMl: { amountPerMl: toNumber(perMl), unit },
      };
    });
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
