import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";

/** Wilson's interval of a share at any confidence. @source newcombe1998 method 3 */
export function scoreInterval(count: number, n: number, confidence: number): { low: number; high: number } {
  const z = normalQuantile((1 + confidence) / 2, 0, 1);
  const p = count / n;
  const spread = z * Math.sqrt(z * z + 4 * n * p * (1 - p));
  const scale = 2 * (n + z * z);
  return {
    low: count === 0 ? 0 : (2 * n * p + z * z - spread) / scale,
    high: count === n ? 1 : (2 * n * p + z * z + spread) / scale,
  };
}
