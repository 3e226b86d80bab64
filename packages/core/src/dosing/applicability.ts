import { toNumber } from "../units/rational.ts";
import { type ChildFacts, isWithin } from "./child-facts.ts";
import type { DosingWarning, Unavailable } from "./dosing-warning.ts";
import type { ApplicabilityLimit, Use } from "./formulary.ts";

/** The first 28 days of life, in months of 365.25 / 12 days. @source who-newborn-period */
const NEONATE_MONTHS = (28 * 12) / 365.25;
/** Published weight bands for children start here. @source who-pocket-book-2013, Annex 2 */
const LOWEST_BAND_KG = 3;
/** A child of unknown age under this weight may be newborn: boys of 28 days, + 2 SD, 5.67 kg. @source who-growth-2006, weight for age */
const MAY_BE_NEWBORN_KG = 5.7;

export interface Applicability {
  readonly unavailable?: Unavailable;
  readonly warnings: readonly DosingWarning[];
}

/** Whether the use is meant for this child at all: limits of age and weight, and the newborn period. */
export function checkApplicability(use: Use, child: ChildFacts): Applicability {
  const warnings: DosingWarning[] = [];
  for (const limit of use.limits) {
    const outcome = checkLimit(limit, child);
    if (outcome === undefined) continue;
    if (outcome.type === "contraindicated") return { unavailable: outcome, warnings: [] };
    warnings.push(outcome);
  }
  const neonate = neonateWarning(use, child);
  return { warnings: neonate ? [...warnings, neonate] : warnings };
}

type LimitOutcome = DosingWarning | Extract<Unavailable, { type: "contraindicated" }>;

function checkLimit(limit: ApplicabilityLimit, child: ChildFacts): LimitOutcome | undefined {
  const { reason } = limit;
  if (limit.by === "weight") {
    const { lowKg: low, highKg: high } = limit;
    if (isWithin(child.kgByBasis.total, low, high)) return undefined;
    const kg = toNumber(child.kgByBasis.total);
    return limit.effect === "contraindicated"
      ? { type: "contraindicated", by: "weight", value: kg, ...edges(low, high), reason }
      : {
          type: "outside-weight-range",
          kg,
          ...(low !== undefined && { lowKg: low }),
          ...(high !== undefined && { highKg: high }),
          reason,
        };
  }
  const { ageMonths } = child;
  const { lowMonths: low, highMonths: high } = limit;
  if (ageMonths === undefined) {
    const isPast =
      limit.passedAtKg !== undefined && isWithin(child.kgByBasis.total, limit.passedAtKg, undefined);
    return isPast && high === undefined ? undefined : { type: "age-needed", for: "limit", reason };
  }
  if ((low === undefined || ageMonths >= low) && (high === undefined || ageMonths < high)) return undefined;
  return limit.effect === "contraindicated"
    ? { type: "contraindicated", by: "age", value: ageMonths, ...edges(low, high), reason }
    : {
        type: "outside-age-range",
        ageMonths,
        ...(low !== undefined && { lowMonths: low }),
        ...(high !== undefined && { highMonths: high }),
        reason,
      };
}

function edges(low: number | undefined, high: number | undefined): { low?: number; high?: number } {
  return { ...(low !== undefined && { low }), ...(high !== undefined && { high }) };
}

function neonateWarning(use: Use, { ageMonths, kgByBasis }: ChildFacts): DosingWarning | undefined {
  if (use.neonates === "covered") return undefined;
  const kg = toNumber(kgByBasis.total);
  if (ageMonths !== undefined && ageMonths < NEONATE_MONTHS) return { type: "neonate", because: "age" };
  if (kg < LOWEST_BAND_KG) return { type: "neonate", because: "weight" };
  if (ageMonths === undefined && kg < MAY_BE_NEWBORN_KG) return { type: "age-needed", for: "neonate" };
  return undefined;
}
