import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { draftFormulary } from "@steelyard/formulary";
import { checkDrawing, createTypefaces } from "@steelyard/paper";
import { describe, expect, it } from "vitest";
import { analyseStudy } from "../analysis/index.ts";
import { examineStudy } from "../findings/index.ts";
import { importStudy, openStudyFile } from "../import/index.ts";
import { assessQuality } from "../quality/index.ts";
import { selectRows } from "../table/index.ts";
import { composeReport } from "./compose-report.ts";
import { layOutPages } from "./lay-out-pages.ts";
import { reportFiles } from "./report-files.ts";

const fonts = createRequire(import.meta.url);
const font = (weight: number): Uint8Array =>
  readFileSync(
    fonts.resolve(
      `@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-${weight}-normal.woff`,
    ),
  );
const typefaces = createTypefaces({ regular: [font(400)], bold: [font(700)] });

const csv = [
  "site,sex,age_months,height_cm,arm_mm,weight_kg,old <b>chart</b> kg",
  ...Array.from(
    { length: 80 },
    (_, i) =>
      `${["Larch", "Alder & Co", "Rowan", "Hazel"][i % 4]},${i % 3 ? "m" : "f"},${20 + i},${(80 + i * 0.6).toFixed(1)},${145 + (i % 15)},${i === 9 ? "" : (10.5 + i * 0.14).toFixed(1)},${(10 + i * 0.15).toFixed(1)}`,
  ),
].join("\n");

async function makeReport() {
  const file = await openStudyFile(new TextEncoder().encode(csv));
  const study = file.ok ? importStudy(file.value) : file;
  if (!study.ok) throw new Error(JSON.stringify(study.error));
  const { table, fates } = study.value;
  const analysis = analyseStudy(
    selectRows(table, (row) => fates[row] === 0),
    {
      methods: [
        { type: "body", inputs: ["lengthCm", "armMm"] },
        { type: "column", column: "old <b>chart</b> kg" },
      ],
      by: ["length", "site"],
    },
  );
  const findings = examineStudy(analysis, {
    seed: 5,
    replicates: 200,
    clusters: "site",
    formulary: { ...draftFormulary, medicines: draftFormulary.medicines.slice(0, 12) },
  });
  return composeReport({
    findings,
    comparison: { marginPoints: 5 },
    study: study.value,
    quality: assessQuality(table, { by: ["site"] }),
    analysis,
    title: "A study",
    fileSha256: "0".repeat(64),
    madeOn: "2026-11-25",
    software: "0.1.0",
    model: "2",
    typefaces,
  });
}

const report = await makeReport();
const files = await reportFiles(report, typefaces);
const csvOf = (name: string): string[][] =>
  String(files.find((file) => file.name === name)?.content)
    .trim()
    .split("\n")
    .map((line) => line.split(","));

describe("a report", () => {
  it("is the same bytes for the same input", async () => {
    expect(await reportFiles(await makeReport(), typefaces)).toEqual(files);
    expect(files.map(({ name }) => name)).toEqual(
      expect.arrayContaining([
        "report.html",
        "report.pdf",
        "accuracy.csv",
        "agreement.csv",
        "flow.svg",
        "bland-altman-1.svg",
        "within-accuracy-1-by-site.svg",
        "forest-1.svg",
        "calibration-1.svg",
        "accuracy-clusters.csv",
        "regression-limits.csv",
        "consequence.csv",
        "learning-curve.svg",
      ]),
    );
  });

  it("is one HTML file that loads nothing and runs nothing from the data", async () => {
    const html = String(files[0]?.content);
    expect(html).not.toMatch(/<script|<link|src=|href=|url\(|<b>chart/);
    expect(html).toContain("old &lt;b&gt;chart&lt;/b&gt; kg");
    expect(html).toContain("Left out: 1");
    expect(html).toContain("Weigh the child as soon as you can.");
  });

  it("sets pages on which no text runs off or stands on another, outside the figures too", async () => {
    const drawing = layOutPages(report, typefaces);
    expect(drawing.pages.length).toBeGreaterThan(3);
    expect(checkDrawing(drawing, typefaces)).toEqual([]);
  });

  it("has the numbers of its tables in full in the CSV files", () => {
    const [head, first] = csvOf("accuracy.csv");
    expect(head?.slice(0, 3)).toEqual(["name", "n", "mean_error_percent"]);
    expect([first?.[0], first?.[1]]).toEqual(["body:length+arm", "79"]);
    expect(String(first?.[2]).length).toBeGreaterThan(8);
  });

  it("states its seed, its clusters and its margin, and judges by them", () => {
    const html = String(files[0]?.content);
    expect(html).toContain("200 replicates with seed 5");
    expect(html).toContain("words of the column “site”");
    expect(html).toContain("unsigned draft for a licensed reviewer");
    const [head = [], row = []] = csvOf("comparison.csv");
    expect(row[head.indexOf("margin")]).toBe("0.05");
    expect(
      ["better", "not worse", "undecided", "worse"].some((word) => html.includes(`<td>${word}</td>`)),
    ).toBe(true);
  });

  it("draws whole clusters: four sites, and the same figures as the accuracy table", () => {
    const [head = [], ...rows] = csvOf("accuracy-clusters.csv");
    const at = (row: string[], name: string): string => row[head.indexOf(name)] ?? "";
    const mean = rows.find((row) => at(row, "figure") === "meanPercent") ?? [];
    expect(at(mean, "clusters")).toBe("4");
    expect(Number(at(mean, "value"))).toBeCloseTo(Number(csvOf("accuracy.csv")[1]?.[2]), 9);
    expect(Number(at(mean, "bca_low"))).toBeLessThan(Number(at(mean, "bca_high")));
  });
});
