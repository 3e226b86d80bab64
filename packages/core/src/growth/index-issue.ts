import type { GrowthIssue, GrowthStandard } from "./growth-standard.ts";

/** The issue of an age or length outside the standard; nothing when it is inside. */
export function indexIssue<Index extends number, Value extends number>(
  standard: GrowthStandard<Index, Value>,
  at: Index,
): GrowthIssue | undefined {
  const { name, unit, low, high } = standard.index;
  if (at >= low && at <= high) return undefined;
  return { type: "index-out-of-range", standardId: standard.id, index: name, unit, value: at, low, high };
}
