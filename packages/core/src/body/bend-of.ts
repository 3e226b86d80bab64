/**
 * The bend stays as it is beyond these expected z. Above there are too few children to bend for; below, NHANES has hardly a wasted child, and the
 * surveys of thin children show no bend there (see reference/surveys-log.md).
 */
const bendWithin = { low: -1.25, high: 2.5 } as const;

/**
 * The powers of the expected z that the bend is made of.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { bendTerms } from "@steelyard/core/body";
 *
 * assert.deepEqual(bendTerms(2), [1, 2, 4, 8]);
 * ```
 */
export function bendTerms(expectedZ: number): readonly [number, number, number, number] {
  const m = withinBend(expectedZ);
  return [1, m, m * m, m * m * m];
}

/** The expected z that the bend is read at. */
export function withinBend(expectedZ: number): number {
  return Math.min(Math.max(expectedZ, bendWithin.low), bendWithin.high);
}

/**
 * The bend at an expected z of weight, in units of variance (1 - variance): a joint normal expects the weight along a straight line of z-scores,
 * and thin and very heavy children lie a little above it.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { bendOf } from "@steelyard/core/body";
 *
 * assert.equal(bendOf([0.1, 0, 0.5, 0], 1), 0.6);
 * ```
 */
export function bendOf(coefficients: readonly number[], expectedZ: number): number {
  const terms = bendTerms(expectedZ);
  let bend = 0;
  for (let i = 0; i < coefficients.length; i++) bend += (coefficients[i] as number) * (terms[i] as number);
  return bend;
}
