import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { checkDrawing, createTypefaces } from "@steelyard/paper";
import { describe, expect, it } from "vitest";
import { analyseStudy } from "../analysis/index.ts";
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
      `${i % 2 ? "Larch" : "Alder & Co"},${i % 3 ? "m" : "f"},${20 + i},${(80 + i * 0.6).toFixed(1)},${145 + (i % 15)},${i === 9 ? "" : (10.5 + i * 0.14).toFixed(1)},${(10 + i * 0.15).toFixed(1)}`,
  ),
].join("\n");

async function report() {
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
  return composeReport({
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

describe("a report", () => {
  it("is the same bytes for the same input", async () => {
    const [one, two] = [
      await reportFiles(await report(), typefaces),
      await reportFiles(await report(), typefaces),
    ];
    expect(one).toEqual(two);
    expect(one.map(({ name }) => name)).toEqual(
      expect.arrayContaining([
        "report.html",
        "report.pdf",
        "accuracy.csv",
        "agreement.csv",
        "flow.svg",
        "bland-altman-1.svg",
        "forest-accuracy-1-by-site.svg",
      ]),
    );
  });

  it("is one HTML file that loads nothing and runs nothing from the data", async () => {
    const html = String((await reportFiles(await report(), typefaces))[0]?.content);
    expect(html).not.toMatch(/<script|<link|src=|href=|url\(|<b>chart/);
    expect(html).toContain("old &lt;b&gt;chart&lt;/b&gt; kg");
    expect(html).toContain("Left out: 1");
    expect(html).toContain("Weigh the child as soon as you can.");
  });

  it("sets pages on which no text runs off or stands on another, outside the figures too", async () => {
    const drawing = layOutPages(await report(), typefaces);
    expect(drawing.pages.length).toBeGreaterThan(3);
    expect(checkDrawing(drawing, typefaces)).toEqual([]);
  });

  it("has the numbers of its tables in full in the CSV files", async () => {
    const files = await reportFiles(await report(), typefaces);
    const [head, first] = String(files.find(({ name }) => name === "accuracy.csv")?.content)
      .split("\n")
      .map((line) => line.split(","));
    expect(head?.slice(0, 3)).toEqual(["name", "n", "mean_error_percent"]);
    expect([first?.[0], first?.[1]]).toEqual(["body:length+arm", "79"]);
    expect(String(first?.[2]).length).toBeGreaterThan(8);
  });
});
