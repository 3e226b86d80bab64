/**
 * The one text of a value: members sorted by name, no white space, every number and string as JSON writes it.
 *
 * Two values have the same text exactly where they hold the same data, so that a fingerprint does not depend on the
 * layout of a file. Throws a `TypeError` on what JSON cannot hold.
 *
 * ```ts
 * import { canonicalJson } from "@steelyard/formulary/ownership";
 * import assert from "node:assert/strict";
 * assert.equal(canonicalJson({ b: [1, 0.5], a: "x" }), '{"a":"x","b":[1,0.5]}');
 * ```
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(",")}]`;
  if (typeof value === "object" && value !== null) {
    const members = Object.entries(value)
      .filter(([, member]) => member !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, member]) => `${JSON.stringify(key)}:${canonicalJson(member)}`);
    return `{${members.join(",")}}`;
  }
  const isHeld =
    typeof value === "string" || typeof value === "boolean" || value === null || Number.isFinite(value);
  if (!isHeld)
    throw new TypeError(`Cannot write a value as JSON must hold it: current value is ${String(value)}`);
  return JSON.stringify(value);
}
