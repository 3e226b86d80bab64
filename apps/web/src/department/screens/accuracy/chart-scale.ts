/** The range of an axis with its round numbers. */
export interface ChartScale {
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
}

/** A scale that holds every value, with zero in it, in steps of 1, 2 or 5 times a power of ten. */
export function chartScale(values: readonly number[]): ChartScale {
  const low = Math.min(0, ...values);
  const high = Math.max(0, ...values);
  const rough = Math.max(high - low, 1) / 6;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((own) => own * power).find((own) => own >= rough) ?? 10 * power;
  const first = Math.floor(low / step);
  const last = Math.ceil(high / step + 1e-9);
  const ticks = Array.from(
    { length: last - first + 1 },
    (_, index) => Math.round((first + index) * step * 1e6) / 1e6,
  );
  return { from: ticks[0] ?? low, to: ticks.at(-1) ?? high, ticks };
}
