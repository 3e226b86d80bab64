import { computeSheet, type SheetLine } from "@steelyard/core/dosing";
import { formatQuantity, kilograms } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import { drawBooklet, emergencyProblems, type Item, pageSizes, renderPdf } from "@steelyard/paper";
import { beforeAll, describe, expect, it } from "vitest";
import { weightSteps } from "../src/booklet/weight-steps.ts";
import { hasPoppler, textOf } from "./support/poppler.ts";
import { rendering, sampleContext } from "./support/sample-context.ts";

/** `STEELYARD_ALL_PROBLEMS=1 npm run unit -- booklet` reads back the whole formulary, on 529 pages. */
const problems =
  process.env.STEELYARD_ALL_PROBLEMS === undefined ? emergencyProblems : (draftFormulary.problemOrder ?? []);
const steps = weightSteps({ formulary: draftFormulary, problems });

/** The sheet that the screen would show for a child of this weight, total and ideal. */
function sheetFor(kg: number): readonly SheetLine[] {
  const own = kilograms(kg);
  const weights = { totalKg: own, idealKg: own, adjustedKg: own, leanKg: own };
  return computeSheet({ formulary: draftFormulary, weights }).filter(({ problem }) =>
    problems.includes(problem),
  );
}

/** What is drawn up or set, as one number in one unit. */
function amountOf(line: SheetLine): number | undefined {
  if (line.unavailable !== undefined) return undefined;
  const scale = { g: 1e9, mg: 1e6, microgram: 1e3 } as Readonly<Record<string, number>>;
  return line.rate?.mlPerH ?? line.dose.amount * (scale[line.dose.unit] ?? 1);
}

describe("weightSteps()", () => {
  it("serve every weight from 2.5 to 100 kg, none twice", () => {
    expect(steps[0]?.fromKg).toBe(2.5);
    expect(steps.at(-1)?.toKg).toBe(100);
    for (const [i, step] of steps.entries()) {
      expect(step.fromKg).toBeLessThanOrEqual(step.kg);
      expect(step.kg).toBeLessThanOrEqual(step.toKg);
      const next = steps[i + 1];
      if (next !== undefined) expect(next.fromKg).toBeGreaterThan(step.toKg);
    }
    expect(steps.length).toBeLessThan(90);
  });

  it("hold no dose that changes by more than 10 % within a page", () => {
    for (const { fromKg, toKg } of steps) {
      const light = sheetFor(fromKg);
      for (const line of sheetFor(toKg)) {
        const other = light.find(({ id }) => id === line.id);
        const [a, b] = [amountOf(line), other && amountOf(other)];
        if (a === undefined || b === undefined) expect([line.id, a]).toEqual([line.id, b]);
        else expect(Math.max(a, b) / Math.min(a, b)).toBeLessThanOrEqual(1.1 + 1e-9);
      }
    }
  });
});

describe("drawBooklet()", () => {
  it("says behind the weights, once for each use, when not to give it, what to beware of and what to watch", async () => {
    const context = await sampleContext({ formulary: draftFormulary });
    const chosen = ["anaphylaxis", "seizure"] as const;
    const input = { ...context, size: pageSizes.a4, formulary: draftFormulary };
    const told: (readonly [number, number])[] = [];
    const onStep = (done: number, of: number): number => told.push([done, of]);
    const { pages } = drawBooklet({ ...input, problems: chosen, onStep });
    // And tells meanwhile how far it is.
    expect(told.length).toBeGreaterThan(20);
    expect(told).toEqual(told.map((_, i) => [i + 1, told.length]));
    const words = (items: readonly Item[]): string =>
      items
        .map((item) => (item.kind === "text" ? item.text : item.kind === "group" ? words(item.items) : ""))
        .join(" ");
    const texts = pages.map(({ items }) => words(items).replaceAll(/[\s\u00a0]+/g, " "));
    const behind = texts.filter((text) => text.includes("Before giving"));
    expect(behind.length).toBeGreaterThan(0);
    expect(texts.slice(-behind.length)).toEqual(behind);
    expect(texts[0]).toContain(`from page ${pages.length - behind.length + 1}.`);
    const all = behind.join(" ");
    const notes = draftFormulary.medicines.flatMap(({ uses }) =>
      uses
        .filter(({ problem }) => chosen.some((own) => own === problem))
        .flatMap((use) => [...use.contraindications, ...use.cautions, ...use.monitoring]),
    );
    expect(notes.length).toBeGreaterThan(20);
    for (const { text } of notes) expect(all).toContain(text.replaceAll(/[\s\u00a0]+/g, " "));
  });
});

describe.skipIf(!hasPoppler)("the booklet as poppler reads it (needs poppler-utils)", () => {
  let text = "";
  beforeAll(async () => {
    const context = await sampleContext({ formulary: draftFormulary });
    const input = { ...context, size: pageSizes.a4, formulary: draftFormulary, problems };
    text = textOf(await renderPdf(drawBooklet(input), { ...context, ...rendering }));
  }, 60_000);

  it("says for every weight and every entry the dose that the sheet computes for that weight", () => {
    const pages = text.split("\f").map((page) => page.replaceAll(/[\s\u00a0]+/g, " "));
    let compared = 0;
    for (const { fromKg, toKg, kg } of steps) {
      const name = fromKg === toKg ? `${fromKg} kg` : `${fromKg} to ${toKg} kg`;
      const own = pages.filter(
        (page) => page.startsWith(`${name} `) || page.includes(` ${name} Computed for ${kg} kg`),
      );
      expect(own.length, name).toBeGreaterThan(0);
      const words = own.join(" ");
      for (const line of sheetFor(kg)) {
        const head = `${line.medicine}, ${line.use}, ${line.route}`;
        const at = words.indexOf(head);
        expect(at, `${name}: ${head}`).toBeGreaterThan(-1);
        if (line.unavailable !== undefined) continue;
        const volume =
          line.volume === undefined || line.dose.unit === "mL"
            ? ""
            : ` = ${formatQuantity({ amount: line.volume.ml, unit: "mL" })} of ${line.volume.strength}`;
        const of = line.of === undefined ? "" : ` ${line.of}`;
        const dose = `${formatQuantity(line.dose)}${of}${volume}`.replaceAll("\u00a0", " ");
        const after = words.slice(at + head.length, at + head.length + dose.length + 14);
        expect(after, `${name}: ${head}`).toContain(dose);
        compared += 1;
      }
    }
    expect(compared).toBeGreaterThan(steps.length * 60);
  });
});
