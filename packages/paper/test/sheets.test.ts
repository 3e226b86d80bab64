import { estimateWeight } from "@steelyard/core/body";
import { computeChild } from "@steelyard/core/child";
import { centimetres, millimetres } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import { signFormulary } from "@steelyard/formulary/ownership";
import {
  createImprint,
  type Drawing,
  drawArmBand,
  drawGuide,
  drawLabels,
  drawReadingTest,
  drawWeightGrid,
  type Item,
  labelSheets,
  pageSizes,
  renderPdf,
  type SheetContext,
} from "@steelyard/paper";
import { describe, expect, it } from "vitest";
import { proofRulersOf } from "./support/proof-rulers-of.ts";
import { readPdf } from "./support/read-pdf.ts";
import { longContext, rendering, sampleContext, sha256 } from "./support/sample-context.ts";
import { calibratedSite } from "./support/sample-site.ts";

const computed = computeChild({
  measurements: { lengthCm: centimetres(136), armMm: millimetres(190) },
  formulary: draftFormulary,
});
if (!computed.ok) throw new Error(computed.error.type);
const report = computed.value;
const [sheet] = labelSheets;
if (sheet === undefined) throw new Error("no sheet of labels");
const size = pageSizes.letter;
// The rulers of the strip are measured with its ticks.
const papers: readonly (readonly [string, (context: SheetContext) => Drawing])[] = [
  ["arm band", (context) => drawArmBand({ ...context, size })],
  ["grid", (context) => drawWeightGrid({ ...context, size, girths: "arm" })],
  ["grid with waist", (context) => drawWeightGrid({ ...context, size, girths: "arm-and-waist" })],
  ["guide", (context) => drawGuide({ ...context, size })],
  ["reading test", (context) => drawReadingTest({ ...context, size })],
  ["labels", (context) => drawLabels({ ...context, sheet, report, problems: ["arrest"] })],
];

/** Without its tables, which hold thousands of figures and no ruler. */
function withoutTables(drawing: Drawing): Drawing {
  const pages = drawing.pages.map((page) => ({
    ...page,
    items: page.items.filter((item) => item.kind !== "group" || item.role !== "Table"),
  }));
  return { ...drawing, pages };
}

describe.each(papers)("the %s", (_, draw) => {
  it("has proof rulers on both axes of every page, and is drawn and written the same twice", async () => {
    const context = await sampleContext({ formulary: draftFormulary });
    const drawing = draw(context);
    const plain = withoutTables(drawing);
    const pdf = await renderPdf(plain, { ...context, ...rendering });
    for (const read of await readPdf(pdf)) {
      const rulers = proofRulersOf(read);
      expect(new Set(rulers.map(({ axis }) => axis))).toEqual(new Set(["across", "along"]));
      for (const ruler of rulers) expect(ruler.hundredMmPt).toBeCloseTo(283.4646, 3);
    }
    expect(draw(context)).toEqual(drawing);
    expect(await renderPdf(plain, { ...context, ...rendering })).toEqual(pdf);
  });
});

describe("the imprint", () => {
  it("is a draft until formulary and calibration are signed, and then says by whom", async () => {
    const unsigned = await sampleContext({ formulary: draftFormulary });
    expect(unsigned.imprint.signed).toBe(false);
    const signed = await longContext({ signed: true });
    expect(signed.imprint.signed).toBe(true);
    const words = textsOf(drawArmBand({ ...signed, size: pageSizes.a4 })).join(" ");
    expect(words).toContain("signed by Dr Wilhelmina Featherstonehaugh-Przybyszewska");
    expect(words).toContain("and by Maximiliane Freifrau von Hohenstauffen-Oppersdorff");
    expect(words).not.toContain("DRAFT");
    const site = calibratedSite({ signed: false });
    const formulary = await signFormulary({
      formulary: draftFormulary,
      name: "A. Example",
      role: "pharmacist",
      date: "2026-11-20",
      sha256,
    });
    expect((await sampleContext({ formulary, site })).imprint.signed).toBe(false);
  });

  const input = {
    paper: "strip",
    choices: {},
    softwareVersion: "0.1.0",
    modelVersion: "2",
    madeOn: "2026-11-25",
    expiresOn: "2027-11-25",
    sha256,
  };

  it("refuses a calibration of another body model and a formulary changed after it was signed", async () => {
    const site = calibratedSite({ modelVersion: "1" });
    expect(await createImprint({ ...input, site })).toEqual({
      ok: false,
      error: { type: "other-model", profileModel: "1", currentModel: "2" },
    });
    const signed = await signFormulary({
      formulary: draftFormulary,
      name: "A. Example",
      role: "pharmacist",
      date: "2026-11-20",
      sha256,
    });
    const formulary = { ...signed, title: "Edited" };
    expect(await createImprint({ ...input, formulary })).toMatchObject({
      ok: false,
      error: { type: "changed-since-signed", name: "A. Example" },
    });
  });

  it("has another fingerprint for another choice, day, formulary or calibration", async () => {
    const variants = await Promise.all([
      createImprint(input),
      createImprint({ ...input, choices: { page: "a3" } }),
      createImprint({ ...input, madeOn: "2026-11-26" }),
      createImprint({ ...input, formulary: draftFormulary }),
      createImprint({ ...input, formulary: { ...draftFormulary, version: "x" } }),
      createImprint({ ...input, site: calibratedSite({ modelVersion: "2" }) }),
    ]);
    const prints = variants.map((own) => (own.ok ? own.value.fingerprint : ""));
    expect(new Set(prints).size).toBe(variants.length);
    for (const print of prints) expect(print).toMatch(/^[0-9a-f]{64}$/);
  });
});

describe("drawWeightGrid()", () => {
  it("prints what the model says for each row and column", async () => {
    const context = await sampleContext();
    const texts = drawWeightGrid({ ...context, size: pageSizes.a4, girths: "arm" }).pages.flatMap(
      ({ items }) => rowsOf(items),
    );
    const row = texts.find(([head, ideal]) => head === "110" && ideal === "18.3") ?? [];
    const heads = Array.from({ length: 26 }, (_, i) => 110 + i * 10);
    // Heads of the row: length and ideal weight; then the cells, leaving out those that are empty.
    const expected = heads.flatMap((arm) => {
      const estimate = estimateWeight({ lengthCm: centimetres(110), armMm: millimetres(arm) });
      if (!estimate.ok) return [];
      const { totalKg } = estimate.value;
      return [totalKg < 20 ? String(Math.round(totalKg * 10) / 10) : String(Math.round(totalKg))];
    });
    const cells = row.slice(2);
    expect(cells.length).toBeGreaterThan(12);
    expect(expected.join(" ")).toContain(cells.join(" "));
  });
});

function textsOf({ pages: own }: Drawing): string[] {
  return own.flatMap(({ items }) => items.flatMap(textIn));
}

function textIn(item: Item): string[] {
  if (item.kind === "text") return [item.text];
  return item.kind === "group" ? item.items.flatMap(textIn) : [];
}

function rowsOf(items: readonly Item[]): string[][] {
  return items.flatMap((item) => {
    if (item.kind !== "group") return [];
    return item.role === "TR" ? [item.items.flatMap(textIn)] : rowsOf(item.items);
  });
}

describe("drawReadingTest()", () => {
  it("asks for children over the whole strip and counts right what is within 4 % of the model", async () => {
    const context = await sampleContext();
    const [questions, answers] = drawReadingTest({ ...context, size: pageSizes.a4 }).pages;
    const asked = (questions?.items ?? []).flatMap(textIn).filter((text) => text.startsWith("length "));
    expect(asked).toHaveLength(10);
    const rows = rowsOf(answers?.items ?? []).slice(1);
    expect(rows).toHaveLength(10);
    for (const [, length = "", arm = "", lineKg = "", also = ""] of rows) {
      expect(asked).toContain(`length ${length} cm`);
      const measured = { lengthCm: centimetres(Number(length)), armMm: millimetres(Number(arm)) };
      const estimate = estimateWeight(measured);
      if (!estimate.ok) throw new Error(length);
      const { totalKg } = estimate.value;
      expect(Math.abs(Number(lineKg) / totalKg - 1)).toBeLessThan(0.02);
      for (const kg of also.split(", ")) expect(Math.abs(Number(kg) / totalKg - 1)).toBeLessThanOrEqual(0.04);
    }
  });
});
