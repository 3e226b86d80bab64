/** What about a point is unlikely to be chance alone. */
export type ChartSignal =
  /** Outside the control limits. */
  | "beyond-limits"
  /** One of many on one side of the centre, one after another. */
  | "long-run";

export interface RunChart {
  /** Mean; absent where there is no value. */
  readonly centre?: number;
  /** Absent where there are too few values to draw any. */
  readonly limits?: { readonly low: number; readonly high: number };
  /** One for each value, in its order. */
  readonly points: readonly { readonly value: number; readonly signals: readonly ChartSignal[] }[];
}

/** Values from which on limits are drawn: fewer move them too much. @source nist-eda-handbook, 6.3.2 (20 to 25) */
export const fewestForLimits = 20;

/** Values on one side of the centre, one after another, that are a signal. @source nist-eda-handbook, 6.3.2, WECO rules */
const longRun = 8;

/** Mean of the range of two values of a normal distribution with standard deviation 1. @source nist-eda-handbook, 6.3.2.2 */
const meanRangeOfTwo = 1.128;

/**
 * Control limits of single values in the order of time, in the unit of the values: mean ± 3 × mean moving range / 1.128.
 *
 * `values`: two at least, finite. Throws a `RangeError` otherwise.
 *
 * @source nist-eda-handbook, 6.3.2.2
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { individualsLimits } from "@steelyard/study/run-chart";
 *
 * const { low, centre, high } = individualsLimits([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]);
 * assert.deepEqual([low.toFixed(2), centre.toFixed(2), high.toFixed(2)], ["45.82", "50.81", "55.80"]);
 * ```
 */
export function individualsLimits(values: readonly number[]): {
  readonly low: number;
  readonly centre: number;
  readonly high: number;
} {
  if (values.length < 2 || !values.every(Number.isFinite)) {
    throw new RangeError(
      `Cannot draw limits as values must be two finite numbers or more: there are ${values.length}`,
    );
  }
  const centre = values.reduce((sum, value) => sum + value, 0) / values.length;
  let ranges = 0;
  for (let i = 1; i < values.length; i++)
    ranges += Math.abs((values[i] as number) - (values[i - 1] as number));
  const reach = (3 * ranges) / (values.length - 1) / meanRangeOfTwo;
  return { low: centre - reach, centre, high: centre + reach };
}

/**
 * A control chart of single values in the order of time, with the points that ask for a look.
 *
 * Limits as `individualsLimits` gives them, from 20 values on. Signals: a value outside the limits; eight or more in a row on one
 * side of the centre (a value on it belongs to neither side and ends a run). `values`: finite. Throws a `RangeError` otherwise.
 *
 * @source nist-eda-handbook, 6.3.2
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { runChart } from "@steelyard/study/run-chart";
 *
 * const { points, limits } = runChart([1, -1, 2, -2, 1, -1, 2, -2, 1, -1, 2, -2, 1, -1, 2, -2, 1, -1, 2, 30]);
 * assert.ok(limits !== undefined);
 * assert.deepEqual(points.at(-1)?.signals, ["beyond-limits"]);
 * ```
 */
export function runChart(values: readonly number[]): RunChart {
  if (!values.every(Number.isFinite)) throw new RangeError("Cannot draw a chart as values must be finite");
  if (values.length === 0) return { points: [] };
  const centre = values.reduce((sum, value) => sum + value, 0) / values.length;
  const limits = values.length < fewestForLimits ? undefined : individualsLimits(values);
  const runs = runLengths(values, centre);
  return {
    centre,
    ...(limits && { limits: { low: limits.low, high: limits.high } }),
    points: values.map((value, index) => {
      const signals: ChartSignal[] = [];
      if (limits !== undefined && (value < limits.low || value > limits.high)) signals.push("beyond-limits");
      if ((runs[index] as number) >= longRun) signals.push("long-run");
      return { value, signals };
    }),
  };
}

/** For each value the length of the run it belongs to. */
function runLengths(values: readonly number[], centre: number): readonly number[] {
  const sides = values.map((value) => Math.sign(value - centre));
  const lengths: number[] = [];
  for (let from = 0; from < sides.length; ) {
    let to = from + 1;
    while (to < sides.length && sides[to] === sides[from] && sides[from] !== 0) to += 1;
    for (let i = from; i < to; i++) lengths.push(to - from);
    from = to;
  }
  return lengths;
}
