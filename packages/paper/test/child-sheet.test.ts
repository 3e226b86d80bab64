import { type ChildReport, computeChild } from "@steelyard/core/child";
import type { ProblemId } from "@steelyard/core/dosing";
import {
  centimetres,
  formatNumber,
  formatQuantity,
  formatWeight,
  kilograms,
  millimetres,
  writtenKg,
} from "@steelyard/core/units";
import { describeDosingWarning, describeWorking } from "@steelyard/core/wording";
import { draftFormulary } from "@steelyard/formulary";
import {
  checkDrawing,
  type Drawing,
  drawChildSheet,
  drawLabels,
  ENGLISH_PAPER,
  type Item,
  labelSheets,
  pageSizes,
} from "@steelyard/paper";
import { FRENCH_PAPER } from "@steelyard/paper/french";
import { describe, expect, it } from "vitest";
import { sampleContext } from "./support/sample-context.ts";

function reportOf(measurements: Parameters<typeof computeChild>[0]["measurements"]): ChildReport {
  const report = computeChild({ measurements, formulary: draftFormulary });
  if (!report.ok) throw new Error(report.error.type);
  return report.value;
}

const report = reportOf({ lengthCm: centimetres(136), armMm: millimetres(190) });
const measured = ["length 136 cm", "arm circumference 190 mm"];
const problems: readonly ProblemId[] = (draftFormulary.problemOrder ?? []).filter((id) => id !== "fluids");

function textOf({ pages }: Drawing): string {
  const of = (item: Item): string =>
    item.kind === "text" ? `${item.text} ` : item.kind === "group" ? item.items.map(of).join("") : "";
  return pages
    .flatMap(({ items }) => items.map(of))
    .join(" ")
    .replaceAll(/[\s\u00a0]+/g, " ");
}

/** The smallest type on it, pt. */
function leastPtOf({ pages }: Drawing): number {
  const of = (item: Item): number =>
    item.kind === "text" ? item.sizePt : Math.min(99, ...(item.kind === "group" ? item.items.map(of) : []));
  return Math.min(...pages.flatMap(({ items }) => items.map(of)));
}

/** Where these words stand. */
function placesOf(items: readonly Item[], words: string): readonly (readonly [number, number])[] {
  return items.flatMap((item) => {
    if (item.kind === "group") return placesOf(item.items, words);
    return item.kind === "text" && item.text === words ? [item.at] : [];
  });
}

function fillsOf({ pages }: Drawing): ReadonlySet<string> {
  const of = (item: Item): string[] =>
    item.kind === "group" ? item.items.flatMap(of) : "fill" in item && item.fill ? [item.fill] : [];
  return new Set(pages.flatMap(({ items }) => items.flatMap(of)));
}

describe("drawChildSheet()", () => {
  it.each([
    ["a small child of unknown age", { lengthCm: centimetres(56), armMm: millimetres(108) }],
    ["a schoolchild", { lengthCm: centimetres(136), armMm: millimetres(190) }],
    ["a heavy adolescent", { lengthCm: centimetres(172), armMm: millimetres(360) }],
  ])("says every warning of every line of %s", async (_, measurements) => {
    const context = await sampleContext({ formulary: draftFormulary });
    const own = reportOf(measurements);
    const text = textOf(drawChildSheet({ ...context, size: pageSizes.a4, report: own, measured, problems }));
    const asWritten = (words: string): string => words.replaceAll(/[\s\u00a0]+/g, " ");
    const seen = new Set<string>();
    for (const line of own.sheet) {
      if (!problems.some((own) => own === line.problem)) continue;
      const later = line.unavailable === undefined ? line.further : [];
      for (const warning of [...line.warnings, ...later.flatMap(({ warnings }) => warnings)]) {
        seen.add(warning.type);
        // A dilution is told by its recipe, a limit and a small rounding in a bracket.
        if (warning.type === "diluted") expect(text).toContain("First dilute:");
        else if (warning.type === "limited") {
          expect(text).toContain(warning.by === "minimum" ? "(minimum" : "(maximum");
        } else if (warning.type === "rounded" && !warning.aboveTolerance) {
          const direction = warning.errorPercent < 0 ? "down" : "up";
          expect(text).toContain(
            asWritten(`rounded ${direction} ${formatNumber(Math.abs(warning.errorPercent))} %`),
          );
        } else expect(text).toContain(asWritten(describeDosingWarning(warning)));
      }
    }
    expect(seen.size).toBeGreaterThan(3);
    expect(seen).toContain("age-needed");
  });

  const usual = [["arrest", "seizure"], ["anaphylaxis", "breathing"], ["poisoning"]] as const;
  it.each([
    ["A4", "English", pageSizes.a4, ENGLISH_PAPER],
    ["A4", "French", pageSizes.a4, FRENCH_PAPER],
    ["Letter", "English", pageSizes.letter, ENGLISH_PAPER],
    ["Letter", "French", pageSizes.letter, FRENCH_PAPER],
  ])("holds a usual choice on one front and one back: %s, %s", async (_, __, size, messages) => {
    const context = await sampleContext({ formulary: draftFormulary, messages });
    for (const problems of usual) {
      const drawing = drawChildSheet({ ...context, size, report, measured, problems });
      expect(drawing.pages.length, problems.join(" and ")).toBe(2);
      expect(checkDrawing(drawing, context.typefaces)).toEqual([]);
      expect(leastPtOf(drawing)).toBeGreaterThanOrEqual(5.5);
    }
  });

  it.each([
    ["a newborn", { lengthCm: centimetres(49), armMm: millimetres(95) }],
    ["the heaviest adolescent", { lengthCm: centimetres(195), armMm: millimetres(480) }],
  ])("has room for the weights of %s in both languages", async (_, measurements) => {
    const own = reportOf(measurements);
    for (const messages of [ENGLISH_PAPER, FRENCH_PAPER]) {
      const context = await sampleContext({ formulary: draftFormulary, messages });
      const input = { ...context, size: pageSizes.a4, report: own, measured };
      const drawing = drawChildSheet({ ...input, problems: ["anaphylaxis"] });
      expect(checkDrawing(drawing, context.typefaces)).toEqual([]);
    }
  });

  it("numbers further sheets, each with a front and a back, its weights and a line for the name", async () => {
    const context = await sampleContext({ formulary: draftFormulary });
    const drawing = drawChildSheet({ ...context, size: pageSizes.letter, report, measured, problems });
    const sheets = drawing.pages.length / 2;
    expect(sheets).toBeGreaterThan(2);
    for (const [i, page] of drawing.pages.entries()) {
      const text = textOf({ ...drawing, pages: [page] });
      const sheet = `of sheet ${Math.floor(i / 2) + 1} of ${sheets}:`;
      const isBlank = text.includes("Child sheet, further doses");
      if (isBlank) expect(text).toContain(`Sheet ${Math.floor(i / 2) + 1} of ${sheets}:`);
      else expect(text).toContain(`${i % 2 === 0 ? "Front" : "Back"} ${sheet}`);
      if (i % 2 === 0 || isBlank) expect(text).toMatch(/28\.4 kg .*Name or number/);
    }
    const text = textOf(drawing);
    const heads = report.sheet.filter(({ problem }) => problems.includes(problem));
    expect(heads.length).toBeGreaterThan(150);
    for (const { medicine, use, route } of heads) expect(text).toContain(`${medicine}, ${use}, ${route}`);
  });

  it("says of a back with nothing on it but lines what it is, with the weights and the name", async () => {
    const context = await sampleContext({ formulary: draftFormulary });
    const two = ["arrest", "airway"] as const;
    const { pages } = drawChildSheet({ ...context, size: pageSizes.letter, report, measured, problems: two });
    const texts = pages.map((page) => textOf({ title: "", language: "en", pages: [page] }));
    const blank = texts.filter((text) => text.includes("Child sheet, further doses"));
    expect(blank.length).toBe(1);
    expect(blank[0]).toMatch(/Sheet 2 of 2: for this child alone; lines .*28\.4 kg .*Name or number/);
    expect(blank[0]).not.toContain("how each dose was worked out");
  });

  it("writes a weight from a scale as exactly as it entered the doses", async () => {
    const context = await sampleContext({ formulary: draftFormulary });
    const weighed = reportOf({ lengthCm: centimetres(88), scaleKg: kilograms(12.34) });
    const input = { ...context, report: weighed, measured, problems: ["seizure"] as const };
    expect(textOf(drawChildSheet({ ...input, size: pageSizes.a4 }))).toContain("12.34 kg");
    expect(textOf(drawLabels({ ...input, sheet: labelSheets[0] as (typeof labelSheets)[number] }))).toContain(
      "for 12.34 kg",
    );
  });

  it("says the weight, every chosen dose as the report has it, and its working", async () => {
    const context = await sampleContext({ formulary: draftFormulary });
    const text = textOf(
      drawChildSheet({ ...context, size: pageSizes.a4, report, measured, problems: ["seizure"] }),
    );
    expect(text).toContain(formatWeight(Math.round(report.weight.totalKg * 10) / 10).replace("\u00a0", " "));
    expect(text).toContain(
      "length 136 cm, arm circumference 190 mm. Estimated from length and arm circumference.",
    );
    const lines = report.sheet.filter(({ problem }) => problem === "seizure");
    expect(lines.length).toBeGreaterThan(10);
    for (const line of lines) {
      if (line.unavailable !== undefined) continue;
      expect(text).toContain(formatQuantity(line.dose).replaceAll("\u00a0", " "));
      for (const step of line.working) {
        // Lines are broken, and nothing is left out where they are.
        expect(text).toContain(describeWorking(step).replaceAll("\u00a0", " "));
      }
    }
    expect(text).not.toContain("adrenaline, anaphylaxis");
  });

  it("gives a weight from a scale without a range", async () => {
    const context = await sampleContext({ formulary: draftFormulary });
    const scaled = reportOf({ lengthCm: centimetres(136), scaleKg: kilograms(31.2) });
    const input = { ...context, size: pageSizes.a4, report: scaled, measured: ["scale weight 31.2 kg"] };
    const text = textOf(drawChildSheet({ ...input, problems: ["anaphylaxis"] }));
    expect(text).toContain("31.2 kg");
    expect(text).toContain("Read from the scale.");
    expect(text).not.toContain("95 % range");
  });
});

describe.each(labelSheets)("drawLabels() on $id", (sheet) => {
  it("keeps every label in its place, with the dose and strength of the report", async () => {
    const context = await sampleContext({ formulary: draftFormulary });
    for (const messages of [context.messages, FRENCH_PAPER]) {
      const drawing = drawLabels({ ...context, messages, sheet, report, problems });
      for (const page of drawing.pages.slice(1)) {
        expect([page.widthMm, page.heightMm]).toEqual([sheet.widthMm, sheet.heightMm]);
        // One line to write on for each label, each in a label of its own on the sheet.
        const places = placesOf(page.items, messages.labels.drawnUp).map(([xMm, yMm]) => [
          Math.floor((xMm - sheet.leftMm) / sheet.stepMm),
          Math.floor((yMm - sheet.topMm) / sheet.labelHeightMm),
        ]);
        expect(places.length).toBeGreaterThan(0);
        expect(new Set(places.map(String)).size).toBe(places.length);
        for (const [column = -1, row = -1] of places) {
          expect(column >= 0 && column < sheet.columns && row >= 0 && row < sheet.rows).toBe(true);
        }
      }
    }
    for (const messages of [context.messages, FRENCH_PAPER]) {
      const coloured = drawLabels({ ...context, messages, sheet, report, problems, classColours: true });
      expect(checkDrawing(coloured, context.typefaces)).toEqual([]);
      // A colour never comes without its class in words.
      expect(textOf(coloured)).toContain(messages.labels.classes.vasopressor);
      expect(fillsOf(coloured).has("#d6bfdd")).toBe(true);
    }
    const plain = drawLabels({ ...context, sheet, report, problems });
    expect([...fillsOf(plain)].filter((fill) => !/^#(..)\1\1$/.test(fill))).toEqual([]);
    // A syringe made up to 8,000 micrograms/mL is labelled as any mass of that size is written.
    const infusions = textOf(drawLabels({ ...context, sheet, report, problems: ["arrest"] }));
    expect(infusions).toContain("400 mg / 50 mL 8 mg/mL");
    expect(infusions).not.toMatch(/\d,\d{3} (?:micro|nano)grams\/mL/);
    const text = textOf(drawLabels({ ...context, sheet, report, problems: ["anaphylaxis"] }));
    expect(text).toContain("adrenaline 280 micrograms = 0.28 mL 1 mg/mL, anaphylaxis, IM");
    expect(text).toContain("DRAFT, not signed");
    for (const line of report.sheet) {
      if (line.problem !== "anaphylaxis" || line.unavailable !== undefined || line.volume === undefined)
        continue;
      if (line.dose.unit === "mL") continue;
      expect(text).toContain(
        `for ${formatWeight(writtenKg(line.basisKg))} ${line.basis}`.replace("\u00a0", " "),
      );
    }
  });
});
