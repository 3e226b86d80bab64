import { drawStrip, pageSizes, renderPdf, type StripMedium } from "@steelyard/paper";
import { beforeAll, describe, expect, it } from "vitest";
import { layOutRoll, layOutSheets, type StripLayout } from "../src/strip/strip-layout.ts";
import { proofRulersOf } from "./support/proof-rulers-of.ts";
import { type ReadPage, type ReadPath, readPdf } from "./support/read-pdf.ts";
import { rendering, sampleContext } from "./support/sample-context.ts";

/** What the issue asks for, mm; the drawing is a hundred times better. */
const allowedMm = 0.1;
const joinAllowedMm = 0.5;

const media: readonly { readonly name: string; readonly medium: StripMedium }[] = [
  { name: "A4", medium: { sheet: pageSizes.a4 } },
  { name: "A3", medium: { sheet: pageSizes.a3 } },
  { name: "Letter", medium: { sheet: pageSizes.letter } },
  { name: "a roll of 297 mm", medium: { rollWidthMm: 297 } },
];

describe.each(media)("the PDF of the length strip on $name", ({ medium }) => {
  let pages: readonly ReadPage[] = [];
  let layout: StripLayout;

  beforeAll(async () => {
    const context = await sampleContext();
    const drawing = drawStrip({ ...context, medium });
    const laidOut = "sheet" in medium ? layOutSheets(medium.sheet) : layOutRoll(medium);
    if (!drawing.ok || !laidOut.ok) throw new Error("Cannot draw the sample");
    layout = laidOut.value;
    pages = await readPdf(await renderPdf(drawing.value, { ...context, ...rendering }));
  });

  it("has pages of the size of the sheet, to 0.001 pt", () => {
    expect(pages).toHaveLength(layout.pages.length);
    for (const { widthPt, heightPt } of pages) {
      expect(widthPt).toBeCloseTo((layout.widthMm * 72) / 25.4, 3);
      expect(heightPt).toBeCloseTo((layout.heightMm * 72) / 25.4, 3);
    }
  });

  it("has a tick at every millimetre from 0 to 2,000, within 0.1 mm, joints included", () => {
    const found = new Map<number, number[]>();
    for (const [index, page] of pages.entries()) {
      for (const { x, y } of tapeTicks(page)) {
        // Where the tick stands on the strip once the page is glued on by its join.
        const along = y - layout.topMm + (layout.pages[index]?.fromCm ?? 0) * 10;
        const nominal = Math.round(along);
        found.set(nominal, [...(found.get(nominal) ?? []), along - nominal]);
        expect(x).toBeCloseTo(layout.chartLeftMm, 2);
      }
    }
    expect([...found.keys()].sort((a, b) => a - b)).toEqual(Array.from({ length: 2001 }, (_, mm) => mm));
    const errors = [...found.values()].flat();
    expect(Math.max(...errors.map(Math.abs))).toBeLessThan(allowedMm / 10);
    // Every tick of an overlap is there twice, once on either page.
    const twice = [...found.values()].filter(({ length }) => length === 2);
    expect(twice).toHaveLength((layout.pages.length - 1) * 11);
  });

  it("joins by crosses that lie on one another", () => {
    for (const [index] of layout.joinsCm.entries()) {
      const before = pages[index] as ReadPage;
      const after = pages[index + 1] as ReadPage;
      const page = layout.pages[index] as StripLayout["pages"][number];
      const joinMm = layout.topMm + (page.toCm - page.fromCm) * 10;
      const upper = crosses(before).filter(({ y }) => Math.abs(y - joinMm) < 5);
      const lower = crosses(after).filter(({ y }) => Math.abs(y - layout.topMm) < 5);
      expect(upper).toHaveLength(2);
      expect(lower).toHaveLength(2);
      for (const [i, { x, y }] of upper.entries()) {
        expect(Math.abs(x - (lower[i]?.x ?? 0))).toBeLessThan(joinAllowedMm / 50);
        expect(Math.abs(y - joinMm - ((lower[i]?.y ?? 0) - layout.topMm))).toBeLessThan(joinAllowedMm / 50);
      }
    }
  });

  it("carries proof rulers of exactly 100 mm and 4 in on both axes of every page", () => {
    for (const page of pages) {
      for (const ruler of proofRulersOf(page)) {
        expect(ruler.hundredMmPt).toBeCloseTo(283.4646, 3);
        expect(ruler.fourInPt).toBeCloseTo(288, 3);
      }
      const axes = proofRulersOf(page).map(({ axis }) => axis);
      expect(axes).toContain("across");
      expect(axes).toContain("along");
    }
  });
});

/** The ticks of the tape: the only black lines of 0.12 mm. */
function tapeTicks({ paths }: ReadPage): { x: number; y: number }[] {
  return paths
    .filter((path) => isStroke(path, 0.12) && path.strokeColour === "#000000")
    .flatMap(({ subpaths }) => subpaths)
    .map((points) => {
      const [start = [0, 0], end = [0, 0]] = points;
      expect(Math.abs(start[1] - end[1])).toBeLessThan(0.001);
      return { x: Math.max(start[0], end[0]), y: start[1] };
    });
}

/** The level arms of the crosses: strong lines of 6 mm. */
function crosses({ paths }: ReadPage): { x: number; y: number }[] {
  return paths
    .filter((path) => isStroke(path, 0.45))
    .flatMap(({ subpaths }) => subpaths)
    .flatMap(([start = [0, 0], end = [0, 0]]) =>
      Math.abs(Math.abs(end[0] - start[0]) - 6) < 0.01 && Math.abs(end[1] - start[1]) < 0.01
        ? [{ x: (start[0] + end[0]) / 2, y: start[1] }]
        : [],
    )
    .sort((a, b) => a.x - b.x);
}

function isStroke({ painted, dashed, lineWidthMm }: ReadPath, widthMm: number): boolean {
  return painted === "stroke" && !dashed && Math.abs(lineWidthMm - widthMm) < 0.005;
}
