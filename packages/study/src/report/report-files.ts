import { renderPdf, renderSvg, type Typefaces } from "@steelyard/paper";
import type { StudyReport } from "./block.ts";
import { layOutPages } from "./lay-out-pages.ts";
import { writeCsv } from "./write-csv.ts";
import { writeHtml } from "./write-html.ts";

/** A file of a report, by its name within the report's folder. */
export interface ReportFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/**
 * All files of a report: report.html, report.pdf, a CSV of every table and an SVG of every figure. The same report gives the same bytes.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readFileSync } from "node:fs";
 * import { createRequire } from "node:module";
 * import { createTypefaces } from "@steelyard/paper";
 * import { reportFiles } from "@steelyard/study/report";
 *
 * const fonts = createRequire(import.meta.url);
 * const folder = "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin";
 * const read = (weight: number) => readFileSync(fonts.resolve(`${folder}-${weight}-normal.woff`));
 * const typefaces = createTypefaces({ regular: [read(400)], bold: [read(700)] });
 * const report = { title: "A study", language: "en", madeOn: "2026-11-25", creator: "steelyard", blocks: [] };
 * const files = await reportFiles(report, typefaces);
 * assert.deepEqual(files.map(({ name }) => name), ["report.html", "report.pdf"]);
 * ```
 */
export async function reportFiles(report: StudyReport, typefaces: Typefaces): Promise<readonly ReportFile[]> {
  const { blocks, madeOn, creator } = report;
  const pdf = await renderPdf(layOutPages(report, typefaces), { typefaces, madeOn, creator });
  return [
    { name: "report.html", content: writeHtml(report) },
    { name: "report.pdf", content: pdf },
    ...blocks.flatMap((block): ReportFile[] => {
      if (block.type === "table")
        return [{ name: `${block.table.name}.csv`, content: writeCsv(block.table) }];
      if (block.type === "figure")
        return [
          {
            name: `${block.name}.svg`,
            content: renderSvg(block.page, { title: block.caption, embed: typefaces.files }),
          },
        ];
      return [];
    }),
  ];
}
