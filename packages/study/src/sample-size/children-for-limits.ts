import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { fewest } from "./children-for-share.ts";

/**
 * Half-width of the 95 % interval of a limit of agreement, in SDs of the differences.
 *
 * `rule`: "rough" is Bland and Altman's 1.96 sqrt(3 / n) of 1986, "exact-variance" 1.96 sqrt(1 / n + 1.96^2 / (2 (n - 1))) of 1999.
 *
 * `children`: a whole number from 2, otherwise a `RangeError`.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { limitHalfWidth } from "@steelyard/study/sample-size";
 *
 * assert.equal(limitHalfWidth(100, "rough").toFixed(2), "0.34");
 * ```
 *
 * @source bland-altman-1986
 * @source bland-altman-1999
 */
export function limitHalfWidth(
  children: number,
  rule: "rough" | "exact-variance" = "exact-variance",
): number {
  if (!Number.isInteger(children) || children < 2)
    throw new RangeError(
      `Cannot compute a half-width as children must be a whole number from 2: current value is ${children}`,
    );
  const z = normalQuantile(0.975, 0, 1);
  return z * Math.sqrt(rule === "rough" ? 3 / children : 1 / children + z ** 2 / (2 * (children - 1)));
}

/**
 * Children needed to know the limits of agreement within plus or minus `halfWidthSd` SDs of the differences.
 *
 * `halfWidthSd`: above 0, otherwise a `RangeError`; 0.25 for a quarter of the SD.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { childrenForLimits } from "@steelyard/study/sample-size";
 *
 * assert.equal(childrenForLimits({ halfWidthSd: 0.25 }), 181);
 * ```
 *
 * @source bland-altman-1999
 */
export function childrenForLimits({ halfWidthSd }: { readonly halfWidthSd: number }): number {
  if (!(halfWidthSd > 0))
    throw new RangeError(
      `Cannot compute children as halfWidthSd must be above 0: current value is ${halfWidthSd}`,
    );
  return fewest((n) => n >= 2 && limitHalfWidth(n) <= halfWidthSd);
}
