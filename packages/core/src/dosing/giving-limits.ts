import { conversionFactor } from "../units/convert-dose.ts";
import type { Dose } from "../units/index.ts";
import {
  add,
  ceilToMultiple,
  compare,
  divide,
  exactly,
  fraction,
  multiply,
  type Rational,
  toNumber,
} from "../units/rational.ts";
import type { DosingWarning } from "./dosing-warning.ts";
import type { Administration, MaximumRate } from "./formulary.ts";
import type { LimitedDose } from "./limited-dose.ts";
import type { DrawnVolume, GivingLimits } from "./sheet-line.ts";
import type { WorkingStep } from "./working-step.ts";

/** Times are written to a tenth of a minute under 10 minutes and to whole minutes above; always up. */
const FINE_BELOW_MIN = 10;

interface Bounds {
  readonly limits?: GivingLimits;
  readonly steps: readonly WorkingStep[];
  readonly warnings: readonly DosingWarning[];
}

/** How fast and how concentrated this dose may be given: dose / highest rate, dose / highest concentration, both up. */
export function givingLimits({
  given,
  limited,
  administration: { maximumRate, maximumConcentrationPerMl },
  volume,
  addedTo,
}: {
  readonly given: Rational;
  readonly limited: LimitedDose;
  readonly administration: Administration;
  readonly volume: DrawnVolume | undefined;
  readonly addedTo: { readonly ml: number } | undefined;
}): Bounds {
  const { unit, kg } = limited;
  const dose: Dose = { amount: toNumber(given), unit };
  const steps: WorkingStep[] = [];
  const warnings: DosingWarning[] = [];
  let limits: GivingLimits = {};
  if (maximumRate !== undefined) {
    const { per } = maximumRate;
    const { amount, perKg, rate } = strictest(maximumRate, limited);
    const exactMin = multiply(divide(given, rate), fraction(per === "h" ? 60 : 1, 1));
    const step = compare(exactMin, exactly(FINE_BELOW_MIN)) < 0 ? fraction(1, 10) : fraction(1, 1);
    const shortestMin = toNumber(ceilToMultiple(exactMin, step));
    limits = { ...limits, shortestMin };
    steps.push({
      step: "shortest-time",
      dose,
      maximumRate: { ...amount, per: perKg ? `kg/${per}` : per },
      ...(perKg && { kg: toNumber(kg) }),
      minutes: shortestMin,
    });
  }
  if (maximumConcentrationPerMl !== undefined) {
    const exactMl = divide(given, inUnit(maximumConcentrationPerMl, unit));
    const step = compare(exactMl, exactly(10)) < 0 ? fraction(1, 10) : fraction(1, 1);
    const leastMl = toNumber(ceilToMultiple(exactMl, step));
    const { amount: amountPerMl, unit: perMlUnit } = maximumConcentrationPerMl;
    limits = { ...limits, leastMl };
    steps.push({
      step: "least-volume",
      dose,
      maximumConcentration: { amountPerMl, unit: perMlUnit },
      ml: leastMl,
    });
    const ml = add(exactly(volume?.ml ?? 0), exactly(addedTo?.ml ?? 0));
    if (volume !== undefined && compare(ml, exactMl) < 0) {
      warnings.push({ type: "too-concentrated", ml: volume.ml, leastMl });
    }
  }
  return { ...(steps.length > 0 && { limits }), steps, warnings };
}

/** The rate that binds this child: so much per kg, or the flat one where that is lower. */
function strictest(
  { amount, perKg, maximum }: MaximumRate,
  { unit, kg }: LimitedDose,
): { readonly amount: Dose; readonly perKg: boolean; readonly rate: Rational } {
  const asked = perKg ? multiply(inUnit(amount, unit), kg) : inUnit(amount, unit);
  const flat = maximum && inUnit(maximum, unit);
  return maximum && flat && compare(flat, asked) < 0
    ? { amount: maximum, perKg: false, rate: flat }
    : { amount, perKg, rate: asked };
}

function inUnit({ amount, unit }: Dose, to: Dose["unit"]): Rational {
  return multiply(exactly(amount), conversionFactor({ from: unit, to }));
}
