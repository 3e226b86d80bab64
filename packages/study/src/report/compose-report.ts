import { cautionBlock } from "@steelyard/core/wording";
import { methodId } from "../methods/index.ts";
import { poolSites, type SiteSummary } from "../pooling/index.ts";
import { accuracyTables, strataTables } from "./accuracy-tables.ts";
import type { Block, StudyReport } from "./block.ts";
import { comparisonTable } from "./comparison-table.ts";
import { ENGLISH_REPORT } from "./english-words.ts";
import { drawBlandAltman } from "./figures/draw-bland-altman.ts";
import { drawCalibration } from "./figures/draw-calibration.ts";
import { drawErrorByStratum } from "./figures/draw-error-by-stratum.ts";
import { drawFlow } from "./figures/draw-flow.ts";
import { drawForest } from "./figures/draw-forest.ts";
import { drawWithinBars } from "./figures/draw-within-bars.ts";
import { findingsBlocks } from "./findings-blocks.ts";
import { findingsEn } from "./messages/findings.en.ts";
import { checklist, methodsParagraph, references } from "./methods-section.ts";
import { poolingTable, siteSummaries } from "./pooling-table.ts";
import { importBlocks, qualityBlocks } from "./quality-blocks.ts";
import type { ReportInput } from "./report-input.ts";

/**
 * The report of a study as blocks. The same input gives the same blocks.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readFileSync } from "node:fs";
 * import { createRequire } from "node:module";
 * import { createTypefaces } from "@steelyard/paper";
 * import { analyseStudy } from "@steelyard/study/analysis";
 * import { inventStudy } from "@steelyard/study/example";
 * import { importStudy, openStudyFile } from "@steelyard/study/import";
 * import { assessQuality } from "@steelyard/study/quality";
 * import { composeReport } from "@steelyard/study/report";
 *
 * const fonts = createRequire(import.meta.url);
 * const folder = "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin";
 * const read = (weight: number) => readFileSync(fonts.resolve(`${folder}-${weight}-normal.woff`));
 * const typefaces = createTypefaces({ regular: [read(400)], bold: [read(700)] });
 * const file = await openStudyFile(new TextEncoder().encode(inventStudy()));
 * const study = file.ok ? importStudy(file.value) : file;
 * assert.ok(study.ok);
 * const { table } = study.value;
 * const analysis = analyseStudy(table, { methods: [{ type: "column", column: "age_rule_kg" }] });
 * const own = { title: "A study", fileSha256: "", madeOn: "2026-11-25", software: "0.1.0", model: "2" };
 * const report = composeReport({ study: study.value, quality: assessQuality(table), analysis, ...own, typefaces });
 * assert.ok(report.blocks.length > 10);
 * ```
 */
export function composeReport(input: ReportInput): StudyReport {
  const { study, quality, analysis, findings, typefaces, title, madeOn, software } = input;
  const words = ENGLISH_REPORT;
  const served = analysis.methods.map(({ estimates }) => ({
    name: words.methodName(estimates.method),
    children: estimates.served,
  }));
  const [accuracy, agreement, ...common] = accuracyTables(analysis, words);
  const bars = analysis.methods.flatMap(({ estimates, overall }) =>
    overall === undefined ? [] : [{ name: words.methodName(estimates.method), ...overall }],
  );
  const caution = cautionBlock();
  const sites = siteSummaries(analysis);
  const names = new Map(
    analysis.methods.map(({ estimates: { method } }) => [methodId(method), words.methodName(method)]),
  );
  const nameOf = (id: string): string => names.get(id) ?? id;
  const blocks: Block[] = [
    ...(input.invented
      ? [
          {
            type: "text",
            text: "These children are invented. Nothing here says anything about real ones.",
          } as const,
        ]
      : []),
    { type: "text", text: `${caution.title}: ${caution.lines.join(" ")}` },
    {
      type: "text",
      text: `File SHA-256 ${input.fileSha256}. Made on ${madeOn} by steelyard ${software}, body model ${input.model}. Errors are estimate minus true weight, in % of the true weight from the scale.`,
    },
    heading("From rows to comparison"),
    figure("flow", words.flowTitle, drawFlow({ flow: study.flow, served, typefaces, words })),
    ...importBlocks(study),
    heading("Data quality"),
    ...qualityBlocks(quality),
    heading("Accuracy"),
    ...[
      accuracy,
      agreement,
      ...common,
      comparisonTable(analysis, words, input.comparison),
      poolingTable(sites),
    ].flatMap((table): Block[] => (table === undefined ? [] : [{ type: "table", table }])),
    ...(bars.length === 0
      ? []
      : [
          figure(
            "within",
            "Estimates within 10 % and 20 % of the scale weight",
            drawWithinBars({ lines: bars, typefaces, words }),
          ),
        ]),
    ...analysis.methods.flatMap((method, i): Block[] => {
      const name = words.methodName(method.estimates.method);
      const id = methodId(method.estimates.method);
      const regression = findings?.regression.find((own) => own.method === id);
      const plot = drawBlandAltman({ analysis, method, typefaces, words, ...(regression && { regression }) });
      const curve = drawCalibration({ analysis, method, typefaces, words });
      return [
        ...(plot === undefined
          ? []
          : [
              figure(
                `bland-altman-${i + 1}`,
                `${name}: error against size, with bias and limits of agreement${regression === undefined ? "" : " (grey: by regression on size)"}`,
                plot,
              ),
            ]),
        ...(curve === undefined
          ? []
          : [
              figure(
                `calibration-${i + 1}`,
                `${name}: scale weight against estimate in ten groups; on the grey line means calibrated`,
                curve,
              ),
            ]),
      ];
    }),
    ...forestBlocks(sites, typefaces, nameOf),
    ...strataBlocks(input),
    ...(findings === undefined ? [] : findingsBlocks(findings, { typefaces, nameOf })),
    heading("Methods"),
    { type: "text", text: methodsParagraph(input) },
    { type: "list", items: references(input) },
    heading("Items of reporting checklists that this report answers"),
    { type: "list", items: checklist(input) },
  ];
  return {
    title: input.invented ? `${title} (invented children)` : title,
    language: words.language,
    madeOn,
    creator: `steelyard ${software}`,
    blocks,
  };
}

function strataBlocks({ analysis, typefaces }: ReportInput): Block[] {
  const words = ENGLISH_REPORT;
  const tables = strataTables(analysis, words);
  if (tables.length === 0) return [];
  return [
    heading("By groups of children"),
    ...tables.flatMap(({ column, method, table }): Block[] => {
      const strata = analysis.methods[method]?.by.find((own) => own.column === column)?.strata ?? [];
      if (strata.length === 0) return [];
      const blocks: Block[] = [{ type: "table", table }];
      if (strata.length > 40) return blocks;
      const page = drawErrorByStratum({ strata, typefaces, words });
      blocks.push(
        figure(`error-${table.name}`, `${table.caption}: mean error and limits of agreement`, page),
      );
      if (column === "site" || column === "country") {
        const lines = strata.map(({ name, summary }) => ({ name, ...summary }));
        blocks.push(
          figure(
            `within-${table.name}`,
            `${table.caption}: within 10 % and 20 %`,
            drawWithinBars({ lines, typefaces, words }),
          ),
        );
      }
      return blocks;
    }),
  ];
}

function forestBlocks(
  sites: readonly SiteSummary[],
  typefaces: ReportInput["typefaces"],
  nameOf: (id: string) => string,
): Block[] {
  if (sites.length < 3 || sites.length > 60) return [];
  return poolSites(sites).map(({ method, within10Percent }, i) =>
    figure(
      `forest-${i + 1}`,
      findingsEn.forestCaption(nameOf(method)),
      drawForest({ figure: within10Percent, typefaces, words: findingsEn }),
    ),
  );
}

function heading(text: string): Block {
  return { type: "heading", text, level: 2 };
}

function figure(name: string, caption: string, page: Extract<Block, { type: "figure" }>["page"]): Block {
  return { type: "figure", name, caption, page };
}
