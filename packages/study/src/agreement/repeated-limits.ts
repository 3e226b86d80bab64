import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import studentQuantile from "@stdlib/stats-base-dists-t-quantile";
import { type Interval, momentsOf } from "../accuracy/interval.ts";
import { chiSquaredQuantile } from "../distributions/chi-squared-quantile.ts";

/** Readings of one child by two methods. */
export interface RepeatedReadings {
  readonly first: readonly number[];
  readonly second: readonly number[];
}

/** Limits of agreement of single readings where children were read several times. */
export interface RepeatedLimits {
  readonly children: number;
  readonly bias: Interval;
  /** SD of the difference of two single readings. */
  readonly sd: Interval;
  /** SD of single readings about the child's own mean: of the pairs' differences (varying), or by method (constant). */
  readonly withinSd: { readonly pairs: number } | { readonly first: number; readonly second: number };
  readonly lower: Interval;
  readonly upper: Interval;
}

/**
 * Bland-Altman limits for repeated readings, for single readings of each method, in the unit of the readings, with MOVER intervals.
 *
 * `constant` (the true value stays; readings need not be paired): variance = s^2 of the children's mean differences + (1 - 1/mx) sx^2
 * + (1 - 1/my) sy^2, with the within-child variances and the harmonic means of the numbers of readings. `varying` (it moves; the k-th readings
 * belong together): variance = s^2 of the children's mean differences + (1 - 1/m) s^2 of the differences within a child.
 *
 * `children`: at least 3; `varying` needs the same number of readings by both; some child must be read more than once by each; finite;
 * otherwise a `RangeError`.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { repeatedLimits } from "@steelyard/study/agreement";
 *
 * const children = [
 *   { first: [10, 11], second: [9, 10] },
 *   { first: [20, 22], second: [21, 21] },
 *   { first: [31, 29], second: [28, 30] },
 * ];
 * assert.equal(repeatedLimits(children, "varying").bias.value.toFixed(3), "0.667");
 * ```
 *
 * @source bland-altman-1999 section 5
 * @source bland-altman-2007
 * @source zou2013
 */
export function repeatedLimits(
  children: readonly RepeatedReadings[],
  trueValue: "constant" | "varying",
): RepeatedLimits {
  checkChildren(children, trueValue);
  const means = children.map(({ first, second }) => momentsOf(first).mean - momentsOf(second).mean);
  const n = children.length;
  const between = momentsOf(means);
  const parts = [{ variance: between.squares / (n - 1), df: n - 1 }];
  let withinSd: RepeatedLimits["withinSd"];
  if (trueValue === "varying") {
    const pairs = withinOf(
      children.map(({ first, second }) => first.map((value, i) => value - (second[i] as number))),
    );
    parts.push(pairs.part);
    withinSd = { pairs: pairs.sd };
  } else {
    const first = withinOf(children.map((child) => child.first));
    const second = withinOf(children.map((child) => child.second));
    parts.push(first.part, second.part);
    withinSd = { first: first.sd, second: second.sd };
  }
  return { children: n, withinSd, ...limitsFrom({ mean: between.mean, parts, n }) };
}

interface VariancePart {
  readonly variance: number;
  readonly df: number;
}

function withinOf(groups: readonly (readonly number[])[]): { part: VariancePart; sd: number } {
  const squares = groups.reduce((sum, group) => sum + momentsOf(group).squares, 0);
  const df = groups.reduce((sum, group) => sum + group.length - 1, 0);
  if (df === 0)
    throw new RangeError(
      "Cannot compute repeated limits as some child must be read more than once: current value is 1",
    );
  const harmonic = groups.length / groups.reduce((sum, group) => sum + 1 / group.length, 0);
  return { part: { variance: (1 - 1 / harmonic) * (squares / df), df }, sd: Math.sqrt(squares / df) };
}

function limitsFrom({
  mean,
  parts,
  n,
}: {
  mean: number;
  parts: readonly VariancePart[];
  n: number;
}): Pick<RepeatedLimits, "bias" | "sd" | "lower" | "upper"> {
  const total = parts.reduce((sum, { variance }) => sum + variance, 0);
  let [below, above] = [0, 0];
  for (const { variance, df } of parts) {
    below += (variance * (1 - df / chiSquaredQuantile(0.975, df))) ** 2;
    above += (variance * (df / chiSquaredQuantile(0.025, df) - 1)) ** 2;
  }
  const sd = Math.sqrt(total);
  const sdLow = Math.sqrt(Math.max(0, total - Math.sqrt(below)));
  const sdHigh = Math.sqrt(total + Math.sqrt(above));
  const z = normalQuantile(0.975, 0, 1);
  const half = studentQuantile(0.975, n - 1) * Math.sqrt((parts[0] as VariancePart).variance / n);
  const inner = Math.hypot(half, z * (sd - sdLow));
  const outer = Math.hypot(half, z * (sdHigh - sd));
  return {
    bias: { value: mean, low: mean - half, high: mean + half },
    sd: { value: sd, low: sdLow, high: sdHigh },
    lower: { value: mean - z * sd, low: mean - z * sd - outer, high: mean - z * sd + inner },
    upper: { value: mean + z * sd, low: mean + z * sd - inner, high: mean + z * sd + outer },
  };
}

function checkChildren(children: readonly RepeatedReadings[], trueValue: "constant" | "varying"): void {
  if (children.length < 3)
    throw new RangeError(
      `Cannot compute repeated limits as there must be at least 3 children: current value is ${children.length}`,
    );
  for (const { first, second } of children) {
    if (![...first, ...second].every(Number.isFinite))
      throw new RangeError(
        `Cannot compute repeated limits as readings must be finite: current value is ${first}, ${second}`,
      );
    const fits = trueValue === "varying" ? first.length === second.length : true;
    if (first.length === 0 || second.length === 0 || !fits)
      throw new RangeError(
        `Cannot compute repeated limits as both methods must have ${trueValue === "varying" ? "equally many" : "some"} readings: current value is ${first.length} and ${second.length}`,
      );
  }
}
