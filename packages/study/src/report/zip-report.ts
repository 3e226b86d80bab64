import { strToU8, zipSync } from "fflate";
import type { ReportFile } from "./report-files.ts";

/**
 * All files of a report in one zip archive; the same files give the same bytes.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { zipReport } from "@steelyard/study/report";
 *
 * const zip = zipReport([{ name: "a.csv", content: "name\n" }]);
 * assert.equal(new TextDecoder().decode(zip.slice(0, 2)), "PK");
 * ```
 */
export function zipReport(files: readonly ReportFile[]): Uint8Array<ArrayBuffer> {
  const entries = files.map(
    ({ name, content }) => [name, typeof content === "string" ? strToU8(content) : content] as const,
  );
  // The first day a zip archive can have: its entries carry no time of making.
  return zipSync(Object.fromEntries(entries), { mtime: new Date(1980, 0, 1) }) as Uint8Array<ArrayBuffer>;
}
