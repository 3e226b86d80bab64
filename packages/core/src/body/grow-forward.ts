import { boxCoxLogValue, boxCoxSlope, boxCoxZ } from "./box-cox.ts";
import type { IndexedModel } from "./indexed-model.ts";
import type { EarlierWeight, Sex } from "./measurements.ts";
import { quantityValue } from "./quantity-value.ts";

/** ln of a weight, and the variance of its error. */
export interface LogWeight {
  readonly logValue: number;
  readonly logVariance: number;
}

/**
 * SD of the change of a child's weight z-score, per square root of a month. In infancy it is the low-birth-weight infants of the LIFE
 * study who change most (@source nutrition-surveys: 0.37 within a month to 1.2 over six); later a correlation of 0.93 over a year.
 */
const zDriftPerRootMonth = { infancy: 0.45, later: 0.1 } as const;
const infancyMonths = 12;

/**
 * An earlier scale weight grown forward to today on the child's own weight-for-age centile, with the error that growth adds.
 *
 * @source cole1995
 */
export function growForward(given: {
  byAge: IndexedModel;
  sexes: readonly Sex[];
  earlier: EarlierWeight;
  ageMonths: number;
}): LogWeight {
  const { byAge, sexes, earlier, ageMonths } = given;
  const then = quantityValue("ageMonths", earlier.ageMonths);
  const now = quantityValue("ageMonths", ageMonths);
  const months = ageMonths - earlier.ageMonths;
  const young = Math.max(0, Math.min(ageMonths, infancyMonths) - Math.min(earlier.ageMonths, infancyMonths));
  const zVariance =
    zDriftPerRootMonth.infancy ** 2 * young + zDriftPerRootMonth.later ** 2 * (months - young);
  let logValue = 0;
  let logVariance = 0;
  for (const sex of sexes) {
    const z = boxCoxZ(byAge.at(sex, then).curve("weight"), Math.log(earlier.kg));
    const curve = byAge.at(sex, now).curve("weight");
    const own = boxCoxLogValue(curve, z);
    logValue += own / sexes.length;
    logVariance += zVariance / boxCoxSlope(curve, own) ** 2 / sexes.length;
  }
  return { logValue, logVariance };
}
