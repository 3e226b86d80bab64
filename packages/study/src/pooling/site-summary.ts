/** What a site hands over instead of rows: sums from which pooled figures follow exactly. No child can be found in it. */
export interface SiteSummary {
  readonly format: "steelyard-site-summary";
  readonly formatVersion: 1;
  readonly site: string;
  readonly methods: readonly MethodSummary[];
}

/** Sums of one method at one site; errors are (estimate minus true) / true, %. */
export interface MethodSummary {
  readonly method: string;
  readonly children: number;
  readonly meanErrorPercent: number;
  /** n - 1. */
  readonly sdErrorPercent: number;
  readonly within10: number;
  readonly within20: number;
  readonly within30: number;
  readonly over20: number;
  readonly under20: number;
}

/**
 * Summarises a site's rows into what it may hand over instead of them.
 *
 * `trueKg` and each method's `estimateKg`: same length, kg; a row where either is not a positive number is left out of that method. A method
 * with fewer than 2 children is left out.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { summariseSite } from "@steelyard/study/pooling";
 *
 * const summary = summariseSite({
 *   site: "north",
 *   trueKg: Float64Array.of(10, 20, 30),
 *   methods: [{ method: "new", estimateKg: Float64Array.of(11, 20, 39) }],
 * });
 * assert.equal(summary.methods[0]?.within10, 2);
 * ```
 */
export function summariseSite({
  site,
  trueKg,
  methods,
}: {
  readonly site: string;
  readonly trueKg: Float64Array;
  readonly methods: readonly { readonly method: string; readonly estimateKg: Float64Array }[];
}): SiteSummary {
  return {
    format: "steelyard-site-summary",
    formatVersion: 1,
    site,
    methods: methods.flatMap(({ method, estimateKg }) => {
      const errors = errorsOf({ estimateKg, trueKg });
      return errors.length < 2 ? [] : [{ method, ...summaryOf(errors) }];
    }),
  };
}

function errorsOf({ estimateKg, trueKg }: { estimateKg: Float64Array; trueKg: Float64Array }): Float64Array {
  const errors = new Float64Array(trueKg.length);
  let n = 0;
  for (let row = 0; row < trueKg.length; row++) {
    const weight = trueKg[row] as number;
    const estimate = estimateKg[row] as number;
    if (weight > 0 && estimate > 0) errors[n++] = (100 * (estimate - weight)) / weight;
  }
  return errors.subarray(0, n);
}

function summaryOf(errors: Float64Array): Omit<MethodSummary, "method"> {
  const n = errors.length;
  const mean = errors.reduce((sum, error) => sum + error, 0) / n;
  const squares = errors.reduce((sum, error) => sum + (error - mean) ** 2, 0);
  const count = (holds: (error: number) => boolean): number =>
    errors.reduce((sum, error) => sum + Number(holds(error)), 0);
  const slack = 1e-9;
  return {
    children: n,
    meanErrorPercent: mean,
    sdErrorPercent: Math.sqrt(squares / (n - 1)),
    within10: count((error) => Math.abs(error) <= 10 + slack),
    within20: count((error) => Math.abs(error) <= 20 + slack),
    within30: count((error) => Math.abs(error) <= 30 + slack),
    over20: count((error) => error > 20 + slack),
    under20: count((error) => error < -20 - slack),
  };
}
