export interface Quantiles {
  readonly p50Ms: number;
  readonly p95Ms: number;
  readonly p99Ms: number;
}

/** Nearest rank, of at least one time. */
export function quantilesOf(timesMs: readonly number[]): Quantiles {
  const sorted = [...timesMs].sort((a, b) => a - b);
  const at = (share: number): number =>
    Number((sorted[Math.max(Math.ceil(share * sorted.length) - 1, 0)] ?? Number.NaN).toPrecision(3));
  return { p50Ms: at(0.5), p95Ms: at(0.95), p99Ms: at(0.99) };
}
