import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";

/**
 * Children a site must weigh to know its mean shift within a percentage of weight.
 *
 * n = (1.96 s / h)^2 with s the SD of single errors, %, and h the half-width. `calibrateSite` gives the same figure from a site's own
 * children (`childrenForOnePercent`), with the spread that it estimated.
 *
 * `sdPercent`, `withinPercent`: above 0, otherwise a `RangeError`; `withinPercent` is 1 when absent.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { childrenForCalibration } from "@steelyard/study/sample-size";
 *
 * assert.equal(childrenForCalibration({ sdPercent: 7 }), 189);
 * ```
 *
 * @source bland-altman-1986
 */
export function childrenForCalibration({
  sdPercent,
  withinPercent = 1,
}: {
  readonly sdPercent: number;
  readonly withinPercent?: number;
}): number {
  for (const [name, value] of Object.entries({ sdPercent, withinPercent }))
    if (!(value > 0 && Number.isFinite(value)))
      throw new RangeError(`Cannot compute children as ${name} must be above 0: current value is ${value}`);
  return Math.ceil(((normalQuantile(0.975, 0, 1) * sdPercent) / withinPercent) ** 2);
}
