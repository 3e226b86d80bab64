import { normalCumulative } from "./normal-cumulative.ts";
import { studentQuantile } from "./student-quantile.ts";
import { studentSeries } from "./student-series.ts";

/** Probabilities an estimate reports. */
const reportedProbabilities = [0.0025, 0.025, 0.5, 0.975, 0.9975] as const;
/** The standard normal quantile of each. */
const normalQuantiles = [
  -2.807_033_768_343_811, -1.959_963_984_540_054, 0, 1.959_963_984_540_054, 2.807_033_768_343_811,
] as const;

/** A standard distribution symmetric about 0: normal, or Student's t where residuals have heavier tails. */
export interface Tail {
  readonly cumulative: (t: number) => number;
  readonly density: (t: number) => number;
  /** d ln density / dt. */
  readonly logDensitySlope: (t: number) => number;
  /** For the probabilities an estimate reports: 0.0025, 0.025, 0.5, 0.975 and 0.9975. */
  readonly quantile: (probability: number) => number;
}

const normal: Tail = {
  cumulative: normalCumulative,
  density: (t) => Math.exp((-t * t) / 2) / Math.sqrt(2 * Math.PI),
  logDensitySlope: (t) => -t,
  quantile: reported(normalQuantiles),
};

const students = new Map<number, Tail>();
/** All components of a model share one df: asking for it again costs a comparison. */
let latest: { readonly df: number; readonly tail: Tail } | undefined;

/** The normal for `df` absent, else Student's t with that even number of degrees of freedom. */
export function tailOf(df: number | undefined): Tail {
  if (df === undefined) return normal;
  if (df === latest?.df) return latest.tail;
  let tail = students.get(df);
  if (tail === undefined) {
    const quantiles = reportedProbabilities.map((probability) => studentQuantile({ probability, df }));
    tail = {
      ...studentSeries(df),
      logDensitySlope: (t) => (-(df + 1) * t) / (df + t * t),
      quantile: reported(quantiles),
    };
    students.set(df, tail);
  }
  latest = { df, tail };
  return tail;
}

/** A list and not a map: five numbers are compared sooner than one is hashed. */
function reported(quantiles: readonly number[]): (probability: number) => number {
  const probabilities: readonly number[] = reportedProbabilities;
  return (probability) => {
    const quantile = quantiles[probabilities.indexOf(probability)];
    if (quantile === undefined) {
      throw new RangeError(
        `Cannot give a quantile as probability must be a reported one: current value is ${probability}`,
      );
    }
    return quantile;
  };
}
