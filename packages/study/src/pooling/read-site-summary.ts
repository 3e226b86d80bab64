import { err, ok, type Result } from "@steelyard/core/result";
import type { MethodSummary, SiteSummary } from "./site-summary.ts";

/** Why a file is no site summary. `at` says where. */
export type SiteSummaryIssue =
  | { readonly type: "not-json" }
  | { readonly type: "not-a-site-summary"; readonly at: string; readonly found: string }
  | { readonly type: "newer-format"; readonly formatVersion: number };

const counts = ["within10", "within20", "within30", "over20", "under20"] as const;

/**
 * Reads a site summary from the text of its file, and checks that its figures can belong together.
 *
 * Fails with `not-json`, `newer-format`, or `not-a-site-summary` and the place: counts must be whole, no more than the children, and
 * in order (within 10 <= within 20 <= within 30; within 20 + over + under = children).
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readSiteSummary } from "@steelyard/study/pooling";
 *
 * const read = readSiteSummary("{}");
 * assert.ok(!read.ok && read.error.type === "not-a-site-summary");
 * ```
 */
export function readSiteSummary(text: string): Result<SiteSummary, SiteSummaryIssue> {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    return err({ type: "not-json" });
  }
  const wrong = (at: string, found: unknown): Result<never, SiteSummaryIssue> =>
    err({ type: "not-a-site-summary", at, found: String(found) });
  if (!isRecord(parsed) || parsed.format !== "steelyard-site-summary")
    return wrong("format", isRecord(parsed) ? parsed.format : parsed);
  const { formatVersion, site, methods } = parsed;
  if (typeof formatVersion !== "number") return wrong("formatVersion", formatVersion);
  if (formatVersion !== 1) return err({ type: "newer-format", formatVersion });
  if (typeof site !== "string" || site === "") return wrong("site", site);
  if (!Array.isArray(methods)) return wrong("methods", methods);
  const read: MethodSummary[] = [];
  for (const [i, method] of (methods as unknown[]).entries()) {
    const fault = faultOf(method);
    if (fault !== undefined)
      return wrong(`methods[${i}].${fault}`, isRecord(method) ? method[fault] : method);
    read.push(method as MethodSummary);
  }
  return ok({ format: "steelyard-site-summary", formatVersion: 1, site, methods: read });
}

/** The first field that cannot be so. */
function faultOf(method: unknown): string | undefined {
  if (!isRecord(method) || typeof method.method !== "string") return "method";
  const number = (field: string): number =>
    typeof method[field] === "number" ? (method[field] as number) : Number.NaN;
  const children = number("children");
  if (!Number.isInteger(children) || children < 2) return "children";
  if (!Number.isFinite(number("meanErrorPercent"))) return "meanErrorPercent";
  if (!(Number.isFinite(number("sdErrorPercent")) && number("sdErrorPercent") >= 0)) return "sdErrorPercent";
  for (const field of counts)
    if (!Number.isInteger(number(field)) || number(field) < 0 || number(field) > children) return field;
  if (number("within10") > number("within20")) return "within10";
  if (number("within20") > number("within30")) return "within20";
  return number("within20") + number("over20") + number("under20") === children ? undefined : "over20";
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
