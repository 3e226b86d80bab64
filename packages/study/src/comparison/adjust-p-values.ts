/**
 * Adjusts p values of several comparisons: Holm (no false claim at all, at the level) or Benjamini-Hochberg (share of false claims).
 *
 * Sorted p_(i) of m: Holm max over j <= i of (m - j + 1) p_(j); Benjamini-Hochberg min over j >= i of m p_(j) / j; both at most 1.
 *
 * `pValues`: each in [0, 1], otherwise a `RangeError`; the result keeps their order.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { adjustPValues } from "@steelyard/study/comparison";
 *
 * assert.deepEqual(adjustPValues([0.01, 0.04, 0.03], "holm"), [0.03, 0.06, 0.06]);
 * ```
 *
 * @source holm1979
 * @source benjamini-hochberg-1995
 */
export function adjustPValues(
  pValues: readonly number[],
  method: "holm" | "benjamini-hochberg",
): readonly number[] {
  for (const p of pValues)
    if (!(p >= 0 && p <= 1))
      throw new RangeError(`Cannot adjust p values as each must be in [0, 1]: current value is ${p}`);
  const m = pValues.length;
  const order = pValues.map((_, i) => i).sort((a, b) => (pValues[a] as number) - (pValues[b] as number));
  const adjusted = new Array<number>(m).fill(1);
  let reached = method === "holm" ? 0 : 1;
  for (let step = 0; step < m; step++) {
    const rank = method === "holm" ? step : m - 1 - step;
    const place = order[rank] as number;
    const p = pValues[place] as number;
    reached = method === "holm" ? Math.max(reached, (m - rank) * p) : Math.min(reached, (m * p) / (rank + 1));
    adjusted[place] = Math.min(1, reached);
  }
  return adjusted;
}
