import { checkDrawing, type Drawing, type Item, renderPdf, renderSvg } from "@steelyard/paper";
import { describe, expect, it } from "vitest";
import { setText } from "../src/drawing/set-text.ts";
import { group } from "../src/drawing/shapes.ts";
import { loadTypefaces } from "./support/load-typefaces.ts";
import { readPdf } from "./support/read-pdf.ts";
import { rendering } from "./support/sample-context.ts";

const typefaces = loadTypefaces();

function drawingOf(items: readonly Item[]): Drawing {
  return { title: "Planted", language: "en", pages: [{ widthMm: 100, heightMm: 80, label: "1", items }] };
}

function faultsOf(items: readonly Item[]) {
  return checkDrawing(drawingOf(items), typefaces);
}

describe("checkDrawing()", () => {
  it("leaves texts alone that stand side by side", () => {
    const first = setText(typefaces, "28.1 kg", [10, 20]);
    const second = setText(typefaces, "190 mm", [10 + first.widthMm + 0.5, 20]);
    expect(faultsOf([first, second])).toEqual([]);
  });

  it("sees a text on another, turned ones too", () => {
    const level = setText(typefaces, "28.1 kg", [10, 20]);
    const turned = setText(typefaces, "28.1 kg", [15, 24], { angleDeg: -60 });
    expect(faultsOf([level, turned])).toEqual([
      { type: "texts-overlap", page: "1", texts: expect.arrayContaining(["28.1 kg"]) },
    ]);
    // Its box parallel to the page would overlap; the text itself does not.
    const beside = setText(typefaces, "28.1 kg", [22.5, 30], { angleDeg: -60 });
    expect(faultsOf([level, beside])).toEqual([]);
  });

  it("sees a text that runs off its box, its clip or the page", () => {
    const within = { xMm: 10, yMm: 10, widthMm: 5, heightMm: 20 };
    const long = setText(typefaces, "adrenaline", [10, 20], { within });
    expect(faultsOf([long])).toMatchObject([{ type: "text-off-its-box", text: "adrenaline" }]);
    const clipped = group([setText(typefaces, "adrenaline", [10, 20])], { clip: within });
    expect(faultsOf([clipped])).toHaveLength(1);
    expect(faultsOf([setText(typefaces, "adrenaline", [95, 20])])).toHaveLength(1);
  });

  it("names characters without a glyph, and knows the letters of both files", () => {
    expect(faultsOf([setText(typefaces, "Łódź, naïve", [10, 20])])).toEqual([]);
    expect(faultsOf([setText(typefaces, "dose ≤ 5", [10, 20])])).toMatchObject([
      { type: "glyphs-missing", characters: "≤" },
    ]);
  });

  it("lets text stand on a watermark", () => {
    const under = group([setText(typefaces, "DRAFT", [10, 20])], { under: true });
    expect(faultsOf([under, setText(typefaces, "28.1 kg", [10, 20])])).toEqual([]);
  });
});

describe("renderPdf() and renderSvg()", () => {
  const text = setText(typefaces, "Łódź 28.1 kg", [10, 20], { font: "bold", sizePt: 12 });
  const drawing = drawingOf([
    group([text], { role: "H1" }),
    { kind: "line", from: [10, 30], to: [60, 30], stroke: { colour: "#000000", widthMm: 0.2 } },
    { kind: "rectangle", xMm: 10, yMm: 40, widthMm: 20, heightMm: 5, fill: "#d2d2d2" },
    {
      kind: "path",
      segments: [
        ["M", 10, 50],
        ["C", 20, 50, 30, 60, 40, 60],
      ],
      stroke: { colour: "#000000", widthMm: 0.3 },
    },
  ]);

  it("put the same things in the same places", async () => {
    const [page] = await readPdf(await renderPdf(drawing, { typefaces, ...rendering }));
    expect(page?.texts.map((own) => own.text).join("")).toBe("Łódź 28.1 kg");
    expect(page?.texts[0]?.at[0]).toBeCloseTo(10, 3);
    expect(page?.texts[0]?.at[1]).toBeCloseTo(20, 3);
    const ends = page?.paths.flatMap(({ subpaths }) => subpaths.map((points) => [points[0], points.at(-1)]));
    expect(ends?.flat().map((point) => point?.map((mm) => Math.round(mm * 1000) / 1000))).toEqual([
      [10, 30],
      [60, 30],
      [10, 40],
      [10, 40],
      [10, 50],
      [40, 60],
    ]);
    const svg = renderSvg(drawing.pages[0] as Drawing["pages"][number], { title: "Planted" });
    expect(svg).toContain('width="100mm" height="80mm" viewBox="0 0 100 80"');
    expect(svg).toContain('d="M10 30L60 30"');
    expect(svg).toContain('<rect x="10" y="40" width="20" height="5" fill="#d2d2d2"/>');
    expect(svg).toContain('d="M10 50C20 50 30 60 40 60"');
    expect(svg).toContain(`textLength="${Math.round(text.widthMm * 1000) / 1000}"`);
  });

  it("measure a text as wide as it is set in the PDF", async () => {
    const [page] = await readPdf(await renderPdf(drawing, { typefaces, ...rendering }));
    const runs = typefaces.runs("Łódź 28.1 kg", { font: "bold", sizePt: 12 });
    let x = 10;
    for (const [i, { widthMm }] of runs.entries()) {
      expect(page?.texts[i]?.at[0]).toBeCloseTo(x, 2);
      x += widthMm;
    }
    expect(x - 10).toBeCloseTo(text.widthMm, 6);
  });

  it("give the same bytes twice, and others on another day", async () => {
    const first = await renderPdf(drawing, { typefaces, ...rendering });
    expect(await renderPdf(drawing, { typefaces, ...rendering })).toEqual(first);
    expect(await renderPdf(drawing, { typefaces, ...rendering, madeOn: "2026-11-26" })).not.toEqual(first);
  });

  it("asks viewers to print at 100 %, is tagged and says its language", async () => {
    const file = new TextDecoder("latin1").decode(await renderPdf(drawing, { typefaces, ...rendering }));
    expect(file).toContain("/PrintScaling /None");
    expect(file).toMatch(/\/MarkInfo \d+ 0 R/);
    expect(file).toContain("/Lang (en)");
    expect(file).toContain("/S /H1");
    expect(file.match(/\/FontFile2/g)).toHaveLength(2);
  });

  it("writes an SVG that carries its fonts where asked to", () => {
    const page = drawing.pages[0] as Drawing["pages"][number];
    const embedded = renderSvg(page, { title: "A & B", embed: typefaces.files });
    expect(embedded.match(/@font-face/g)).toHaveLength(4);
    expect(embedded).toContain("<title>A &amp; B</title>");
    const [first] = typefaces.files.regular;
    expect(embedded).toContain(Buffer.from(first as Uint8Array).toString("base64"));
  });
});
