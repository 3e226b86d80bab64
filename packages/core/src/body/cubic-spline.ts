/**
 * A cubic B-spline basis on equally spaced knots over [low, high], the shape of every curve of the body model.
 *
 * `intervals` pieces give `intervals + 3` coefficients. Outside [low, high] the last piece is not extended:
 * the argument is clamped, since the model refuses lengths beyond its ends anyway.
 *
 * @source deboor1978
 */
export interface SplineBasis {
  readonly low: number;
  readonly high: number;
  readonly intervals: number;
}

/** The four basis functions that are not zero at x, and the index of the first. */
export interface SplineWeights {
  readonly first: number;
  readonly weights: readonly [number, number, number, number];
}

/**
 * Number of coefficients of a curve on this basis.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { splineSize } from "@steelyard/core/body";
 *
 * assert.equal(splineSize({ low: 0, high: 1, intervals: 4 }), 7);
 * ```
 */
export function splineSize(basis: SplineBasis): number {
  return basis.intervals + 3;
}

/**
 * The basis functions at x (uniform cubic B-spline; they are >= 0 and add to 1).
 *
 * Throws a `RangeError` when x is not finite.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { splineWeights } from "@steelyard/core/body";
 *
 * const { first, weights } = splineWeights({ low: 0, high: 4, intervals: 4 }, 1.5);
 * assert.equal(first, 1);
 * assert.ok(Math.abs(weights.reduce((sum, weight) => sum + weight, 0) - 1) < 1e-12);
 * ```
 */
export function splineWeights(basis: SplineBasis, x: number): SplineWeights {
  if (!Number.isFinite(x)) {
    throw new RangeError(`Cannot evaluate a spline as x must be a finite number: current value is ${x}`);
  }
  const clamped = Math.min(Math.max(x, basis.low), basis.high);
  const position = ((clamped - basis.low) / (basis.high - basis.low)) * basis.intervals;
  const first = Math.min(Math.floor(position), basis.intervals - 1);
  const t = position - first;
  const u = 1 - t;
  return {
    first,
    weights: [
      (u * u * u) / 6,
      (3 * t * t * t - 6 * t * t + 4) / 6,
      (-3 * t * t * t + 3 * t * t + 3 * t + 1) / 6,
      (t * t * t) / 6,
    ],
  };
}

/**
 * The curve with these coefficients at x. Throws a `RangeError` when their number does not fit the basis.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { splineValue } from "@steelyard/core/body";
 *
 * assert.ok(Math.abs(splineValue({ low: 0, high: 4, intervals: 4 }, [3, 3, 3, 3, 3, 3, 3], 2.2) - 3) < 1e-12);
 * ```
 */
export function splineValue(basis: SplineBasis, coefficients: readonly number[], x: number): number {
  if (coefficients.length !== splineSize(basis)) {
    throw new RangeError(
      `Cannot evaluate a spline as it needs ${splineSize(basis)} coefficients: current number is ${coefficients.length}`,
    );
  }
  const { first, weights } = splineWeights(basis, x);
  let value = 0;
  weights.forEach((weight, i) => {
    value += weight * (coefficients[first + i] ?? 0);
  });
  return value;
}
