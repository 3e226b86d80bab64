import { type Interval, momentsOf } from "../accuracy/interval.ts";
import { chiSquaredQuantile } from "../distributions/chi-squared-quantile.ts";
import { checkReadings } from "./check-readings.ts";

/** Technical error of measurement. */
export interface TechnicalError {
  readonly children: number;
  readonly readings: number;
  /** In the unit of the readings; its 95 % interval from the chi-squared distribution of the within-child variance. */
  readonly tem: Interval;
  /** % of the mean of all readings. */
  readonly relativePercent: number;
  /** Share of the variance that is not measurement error, 0 to 1. */
  readonly reliability: number;
}

/**
 * Technical error of measurement of repeated readings of the same children, in the unit of the readings, with relative error and
 * reliability.
 *
 * TEM = sqrt(sum over children of sum (x - child's mean)^2 / (children x (readings - 1))), which is sqrt(sum d^2 / 2n) for two;
 * reliability R = 1 - TEM^2 / SD^2 with the SD of all readings (n - 1).
 *
 * `readings`: one row per child, the same number (at least 2) of finite readings in each, at least 2 children, not all equal; a
 * `RangeError` otherwise.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { technicalError } from "@steelyard/study/agreement";
 *
 * const { tem } = technicalError([[140, 142], [150, 150], [161, 159]]);
 * assert.equal(tem.value.toFixed(4), "1.1547");
 * ```
 *
 * @source ulijaszek-kerr-1999
 */
export function technicalError(readings: readonly (readonly number[])[]): TechnicalError {
  const { children, readers } = checkReadings("compute a technical error", readings);
  const all = momentsOf(readings.flat());
  if (all.squares === 0 || all.mean === 0)
    throw new RangeError(
      `Cannot compute a technical error as readings must differ about a mean other than 0: current value is ${all.mean}`,
    );
  const within = readings.reduce((sum, row) => sum + momentsOf(row).squares, 0);
  const df = children * (readers - 1);
  const tem = Math.sqrt(within / df);
  const variance = all.squares / (children * readers - 1);
  return {
    children,
    readings: readers,
    tem: {
      value: tem,
      low: Math.sqrt(within / chiSquaredQuantile(0.975, df)),
      high: Math.sqrt(within / chiSquaredQuantile(0.025, df)),
    },
    relativePercent: (100 * tem) / Math.abs(all.mean),
    reliability: 1 - (tem * tem) / variance,
  };
}
