/**
 * The same text for the same facts, in whatever order their parts were written: keys sorted, no spaces.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { canonicalText } from "@steelyard/records/case";
 *
 * assert.equal(canonicalText({ b: 1, a: [2] }), canonicalText({ a: [2], b: 1 }));
 * ```
 */
export function canonicalText(value: unknown): string {
  return JSON.stringify(value, (_key, part: unknown) =>
    typeof part === "object" && part !== null && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)))
      : part,
  );
}
