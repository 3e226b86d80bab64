import { concordanceValue } from "../accuracy/concordance.ts";
import type { Interval } from "../accuracy/interval.ts";
import { limitsOfAgreement } from "../accuracy/limits-of-agreement.ts";
import { slopeOf } from "../accuracy/regression-limits.ts";
import { medianInPlace } from "./median.ts";
import { type Proportion, wilsonInterval } from "./wilson-interval.ts";

/** Limits of agreement: 95 % of differences lie between them, with the interval of each. */
export interface Limits {
  readonly bias: Interval;
  readonly sd: number;
  readonly lower: Interval;
  readonly upper: Interval;
}

/** How far estimates lie from the scale: estimate minus true weight, % of true weight. */
export interface ErrorSummary {
  readonly n: number;
  readonly meanPercent: number;
  readonly sdPercent: number;
  readonly medianPercent: number;
  /** Median of the distances from the median. */
  readonly madPercent: number;
  readonly rmspe: number;
  readonly mape: number;
  readonly within10: Proportion;
  readonly within20: Proportion;
  readonly within30: Proportion;
  /** Too high, or too low, by more than 20 %. */
  readonly over20: Proportion;
  readonly under20: Proportion;
  readonly percent: Limits;
  readonly kg: Limits;
  /** Of the ratio estimate / true, back from logarithms. */
  readonly ratio: Limits;
  /** Lin's concordance of estimate and true weight, kg. */
  readonly concordance: number;
  /** Change of the percentage error for each kg of their mean: proportional bias. */
  readonly slopePercentPerKg: number;
}

/**
 * Summary of paired estimates and true weights, kg, positive; undefined for fewer than two. Percentage error is 100 (estimate - true) / true;
 * limits of agreement are bias -/+ 1.96 SD with t-intervals (SE of a limit: SD sqrt(1/n + 1.96^2 / (2 (n - 1)))).
 *
 * @source bland-altman-1986
 * @source bland-altman-1999
 * @source lin1989
 * @source newcombe1998
 */
export function summariseErrors({
  estimateKg,
  trueKg,
}: {
  readonly estimateKg: Float64Array;
  readonly trueKg: Float64Array;
}): ErrorSummary | undefined {
  const n = trueKg.length;
  if (n < 2) return undefined;
  const errors = new Float64Array(n);
  const differences = new Float64Array(n);
  const logs = new Float64Array(n);
  const sizes = new Float64Array(n);
  const within = [0, 0, 0];
  let [over, under, squares, absolute] = [0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    const estimate = estimateKg[i] as number;
    const weight = trueKg[i] as number;
    const error = (100 * (estimate - weight)) / weight;
    errors[i] = error;
    differences[i] = estimate - weight;
    sizes[i] = (estimate + weight) / 2;
    logs[i] = Math.log(estimate / weight);
    // A boundary is inside: 11 for 10 is within 10 %, whatever the last bit says.
    const size = Math.abs(error) - 1e-9;
    if (size <= 10) within[0] = (within[0] as number) + 1;
    if (size <= 20) within[1] = (within[1] as number) + 1;
    if (size <= 30) within[2] = (within[2] as number) + 1;
    if (error - 1e-9 > 20) over++;
    if (-error - 1e-9 > 20) under++;
    squares += error * error;
    absolute += Math.abs(error);
  }
  const percent = limitsOf(errors);
  const log = limitsOf(logs);
  const ratio = (interval: Interval): Interval => ({
    value: Math.exp(interval.value),
    low: Math.exp(interval.low),
    high: Math.exp(interval.high),
  });
  const median = medianInPlace(Float64Array.from(errors));
  return {
    n,
    meanPercent: percent.bias.value,
    sdPercent: percent.sd,
    medianPercent: median,
    madPercent: medianInPlace(errors.map((error) => Math.abs(error - median))),
    rmspe: Math.sqrt(squares / n),
    mape: absolute / n,
    within10: wilsonInterval(within[0] as number, n),
    within20: wilsonInterval(within[1] as number, n),
    within30: wilsonInterval(within[2] as number, n),
    over20: wilsonInterval(over, n),
    under20: wilsonInterval(under, n),
    percent,
    kg: limitsOf(differences),
    ratio: { bias: ratio(log.bias), sd: Math.exp(log.sd), lower: ratio(log.lower), upper: ratio(log.upper) },
    concordance: concordanceValue(estimateKg, trueKg),
    slopePercentPerKg: slopeOf(sizes, errors),
  };
}

/** Limits with the symmetric interval of 1999: the one that the report prints and describes. */
function limitsOf(values: Float64Array): Limits {
  const { bias, sd, approximate } = limitsOfAgreement(values);
  return { bias, sd: sd.value, ...approximate };
}
