import { cautionBlock } from "@steelyard/core/wording";
import { drawStrip, pageSizes, renderPdf, type SheetContext } from "@steelyard/paper";
import jsQR from "jsqr";
import { beforeAll, describe, expect, it } from "vitest";
import { layOutSheets } from "../src/strip/strip-layout.ts";
import { hasPoppler, type Pixels, rasterise, textOf } from "./support/poppler.ts";
import { type ReadPage, readPdf } from "./support/read-pdf.ts";
import { rendering, sampleContext } from "./support/sample-context.ts";

// The reader is CommonJS, and a loader may or may not unwrap its default.
const decode = (typeof jsQR === "function" ? jsQR : jsQR.default) as typeof jsQR.default;

const dpi = 600;
const mmPx = dpi / 25.4;

describe.skipIf(!hasPoppler)("a page of the strip as a printer gets it (needs poppler-utils)", () => {
  let pdf: Uint8Array;
  let context: SheetContext;
  let pages: readonly ReadPage[] = [];

  beforeAll(async () => {
    context = await sampleContext();
    const drawing = drawStrip({ ...context, medium: { sheet: pageSizes.a4 } });
    if (!drawing.ok) throw new Error("Cannot draw the sample");
    pdf = await renderPdf(drawing.value, { ...context, ...rendering });
    pages = await readPdf(pdf);
  });

  it("has a proof ruler of 100 mm, counted in pixels at 600 dpi", () => {
    const layout = layOutSheets(pageSizes.a4);
    if (!layout.ok) throw new Error("Cannot lay out the sample");
    // The band of the ticks over the middle line of the ruler across page 3, away from its figures.
    const ruler = bodyOfRuler(pages[2] as ReadPage);
    const box = { xMm: ruler.xMm - 2, yMm: ruler.yMm - 1, widthMm: 106, heightMm: 0.6 };
    const ticks = darkColumns(rasterise(pdf, { page: 3, dpi, ...box }));
    expect(ticks).toHaveLength(101);
    const [first = 0, last = 0] = [ticks[0], ticks[100]];
    expect(Math.abs(last - first - 100 * mmPx)).toBeLessThan(0.1 * mmPx);
    for (const [mm, at] of ticks.entries()) expect(Math.abs(at - first - mm * mmPx)).toBeLessThan(0.1 * mmPx);
  });

  it("has the fingerprint in a QR code that a reader of another make decodes", () => {
    const box = { xMm: 6, yMm: 138, widthMm: 16, heightMm: 24 };
    const { width, height, grey } = rasterise(pdf, { page: 2, dpi: 300, ...box });
    const rgba = new Uint8ClampedArray(width * height * 4);
    for (const [i, value] of grey.entries()) rgba.set([value, value, value, 255], i * 4);
    expect(decode(rgba, width, height)?.data).toBe(`STEELYARD ${context.imprint.fingerprint.toUpperCase()}`);
  });

  it("says on every page what it was made from, how to print it and the cautions", () => {
    for (const [i] of pages.entries()) {
      const text = spaced(pages[i]?.texts.map((own) => own.text).join(" ") ?? "");
      for (const caution of cautionBlock().lines) expect(text).toContain(caution);
      expect(text).toContain("Print at 100 %");
      expect(text).toContain(`body model ${context.imprint.modelVersion}`);
      expect(text).toContain("Do not use after 2027-11-25");
      expect(text).toContain("Not calibrated to any site");
      expect(text).toContain("nobody has signed this sheet");
      expect(text).toContain("DRAFT, not signed");
    }
  });

  it("has its text as text, in order, for poppler too", () => {
    const text = textOf(pdf, 1);
    expect(text).toContain("HEAD LINE: the crown of the head touches this edge");
    expect(text).toContain("Straighten the legs, foot square to the tape.");
    expect(textOf(pdf, 4)).toMatch(/85\s+11\.4\s+−14 \+18 %/);
  });
});

function spaced(text: string): string {
  return text.replaceAll(/[\s\u00a0]+/g, " ");
}

/** Where the ruler across a page begins. */
function bodyOfRuler({ paths }: ReadPage): { xMm: number; yMm: number } {
  for (const { subpaths } of paths) {
    for (const [start, end] of subpaths) {
      if (start === undefined || end === undefined) continue;
      if (Math.abs(end[0] - start[0] - 101.6) < 0.01 && Math.abs(end[1] - start[1]) < 0.01) {
        return { xMm: start[0], yMm: start[1] };
      }
    }
  }
  throw new Error("No proof ruler across this page");
}

/** Middles of the runs of columns that are dark from top to bottom, in pixels. */
function darkColumns({ width, height, grey }: Pixels): number[] {
  const middles: number[] = [];
  let from = -1;
  for (let x = 0; x <= width; x += 1) {
    let sum = 0;
    for (let y = 0; y < height; y += 1) sum += x < width ? (grey[y * width + x] ?? 255) : 255;
    const dark = sum / height < 150;
    if (dark && from < 0) from = x;
    if (!dark && from >= 0) {
      middles.push((from + x - 1) / 2);
      from = -1;
    }
  }
  return middles;
}
