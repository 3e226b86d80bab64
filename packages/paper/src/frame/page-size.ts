import { err, ok, type Result } from "@steelyard/core/result";

export interface PageSize {
  readonly name: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Sheets that printers take: ISO 216, and North American Letter of 8.5 by 11 in. */
export const pageSizes: Readonly<Record<"a4" | "a3" | "letter", PageSize>> = {
  a4: { name: "A4", widthMm: 210, heightMm: 297 },
  a3: { name: "A3", widthMm: 297, heightMm: 420 },
  letter: { name: "Letter", widthMm: 8.5 * 25.4, heightMm: 11 * 25.4 },
};

export type PageName = keyof typeof pageSizes;

/** No printer prints to the edge; office printers leave up to this much white (common practice). */
export const unprintableMm = 6;

export interface UnknownPage {
  readonly type: "unknown-page";
  readonly page: string;
  readonly known: readonly string[];
}

/**
 * The sheet of a name such as "a4", or which names there are.
 *
 * @source iso-216
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { pageSizeOf } from "@steelyard/paper";
 *
 * const size = pageSizeOf("letter");
 * assert.ok(size.ok && Math.abs(size.value.widthMm - 215.9) < 1e-9);
 * assert.equal(pageSizeOf("b5").ok, false);
 * ```
 */
export function pageSizeOf(name: string): Result<PageSize, UnknownPage> {
  const known = Object.keys(pageSizes) as PageName[];
  const found = known.find((own) => own === name.toLowerCase());
  return found === undefined ? err({ type: "unknown-page", page: name, known }) : ok(pageSizes[found]);
}
