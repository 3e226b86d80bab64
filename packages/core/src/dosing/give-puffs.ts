import { conversionFactor } from "../units/convert-dose.ts";
import { type Dose, formatQuantity } from "../units/index.ts";
import {
  compare,
  divide,
  exactly,
  floorToMultiple,
  multiply,
  type Rational,
  roundToMultiple,
  toNumber,
} from "../units/rational.ts";
import type { DosingWarning } from "./dosing-warning.ts";
import type { Delivered } from "./draw-up.ts";
import type { LimitedDose } from "./limited-dose.ts";
import { errorPercent } from "./measure-volume.ts";
import type { InhalerStrength } from "./strength.ts";
import { ROUNDING_TOLERANCE_PERCENT } from "./syringes.ts";

const ONE: Rational = { numerator: 1, denominator: 1 };

/** One way to give the dose: so many whole puffs of one inhaler. */
interface Count {
  readonly inhaler: InhalerStrength;
  /** What a puff holds, in the unit of the dose. */
  readonly perPuff: Rational;
  readonly exactPuffs: Rational;
  readonly puffs: Rational;
  readonly errorPercent: number;
}

/**
 * The dose in whole puffs: the nearest number that does not pass the maximum, of the first inhaler that comes within
 * 5 %, else of the first. Less than half a puff, or a puff above the maximum, cannot be given: the line says so.
 */
export function givePuffs({
  limited,
  inhalers,
  medicine,
}: {
  readonly limited: LimitedDose;
  readonly inhalers: readonly InhalerStrength[];
  readonly medicine: string;
}): Delivered {
  const counts = inhalers.map((inhaler) => countPuffs(limited, inhaler));
  const chosen =
    counts.find(
      ({ puffs, errorPercent: percent }) =>
        puffs.numerator > 0 && Math.abs(percent) <= ROUNDING_TOLERANCE_PERCENT,
    ) ?? counts[0];
  if (chosen === undefined) throw new TypeError("Cannot count puffs as inhalers must not be empty");
  const { inhaler, perPuff, exactPuffs, puffs } = chosen;
  if (puffs.numerator === 0) {
    return {
      amount: limited.amount,
      steps: [],
      warnings: [{ type: "not-in-puffs", puffs: toNumber(exactPuffs), perPuff: labelled(inhaler) }],
    };
  }
  const { unit } = limited;
  const mass: Dose = {
    amount: toNumber(multiply(puffs, exactly(inhaler.amountPerPuff))),
    unit: inhaler.unit,
  };
  const percent = chosen.errorPercent;
  const aboveTolerance = Math.abs(percent) > ROUNDING_TOLERANCE_PERCENT;
  const warnings: DosingWarning[] =
    percent === 0 ? [] : [{ type: "rounded", errorPercent: percent, aboveTolerance }];
  return {
    amount: multiply(puffs, perPuff),
    puffs: {
      puffs: toNumber(puffs),
      strength: formatQuantity(labelled(inhaler)).replaceAll("\u00a0", " "),
      containerPuffs: inhaler.containerPuffs,
    },
    // A dose that is counted in mass says its mass already.
    ...(unit === "puff" && { equivalents: [{ dose: mass, of: medicine }] }),
    steps: [
      {
        step: "puffs",
        dose: { amount: toNumber(limited.amount), unit },
        perPuff: labelled(inhaler),
        exactPuffs: toNumber(exactPuffs),
        puffs: toNumber(puffs),
        result: mass,
        errorPercent: percent,
      },
    ],
    warnings,
  };
}

function countPuffs(limited: LimitedDose, inhaler: InhalerStrength): Count {
  const { unit, amount, maximum } = limited;
  const perPuff =
    unit === "puff"
      ? ONE
      : multiply(exactly(inhaler.amountPerPuff), conversionFactor({ from: inhaler.unit, to: unit }));
  const exactPuffs = divide(amount, perPuff);
  const nearest = roundToMultiple(exactPuffs, ONE);
  const passes = maximum !== undefined && compare(multiply(nearest, perPuff), maximum) > 0;
  const puffs = passes ? floorToMultiple(exactPuffs, ONE) : nearest;
  return {
    inhaler,
    perPuff,
    exactPuffs,
    puffs,
    errorPercent: errorPercent({ exact: exactPuffs, rounded: puffs }),
  };
}

function labelled({ amountPerPuff, unit }: InhalerStrength): Dose {
  return { amount: amountPerPuff, unit, per: "puff" };
}
