/// <reference path="./pdfkit.d.ts" />
import { PDFDocument, type StructureChild, type StructureElement } from "pdfkit";
import type { Box, Drawing, Group, Item, Page, Role } from "../drawing/item.ts";
import { pointMm } from "../drawing/shapes.ts";
import type { Typefaces } from "../drawing/typefaces.ts";
import { drawLeaf, fontKey } from "./draw-leaf.ts";

export interface RenderPdfOptions {
  readonly typefaces: Typefaces;
  /** The day on it, YYYY-MM-DD: the same drawing and day give the same bytes. */
  readonly madeOn: string;
  /** What made it, as "steelyard 0.1.0". */
  readonly creator: string;
  /** Told after each page: how many of how many are written. */
  readonly onPage?: (done: number, of: number) => void;
}

/**
 * A drawing as the bytes of a PDF: true to scale, fonts embedded and subset, tagged, "print at 100 %" set in the file.
 *
 * Each page's content is in millimetres under one scale of 72/25.4, so that the coordinates of the drawing are those of
 * the file, to 0.001 mm. Groups with a role become structure elements in the order of the list; text without one
 * becomes a paragraph, and what is neither is an artifact. Rejects with what the PDF library throws.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readFileSync } from "node:fs";
 * import { createRequire } from "node:module";
 * import { createTypefaces, type Drawing, renderPdf } from "@steelyard/paper";
 *
 * const fonts = createRequire(import.meta.url);
 * const folder = "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin";
 * const read = (weight: number) => readFileSync(fonts.resolve(`${folder}-${weight}-normal.woff`));
 * const typefaces = createTypefaces({ regular: [read(400)], bold: [read(700)] });
 * const drawing = {
 *   title: "A line of 100 mm",
 *   language: "en",
 *   pages: [
 *     {
 *       widthMm: 210,
 *       heightMm: 297,
 *       label: "1",
 *       items: [
 *         { kind: "line", from: [20, 20], to: [120, 20], stroke: { colour: "#000000", widthMm: 0.25 } },
 *       ],
 *     },
 *   ],
 * } satisfies Drawing;
 * const bytes = await renderPdf(drawing, { typefaces, madeOn: "2026-11-25", creator: "steelyard 0.1.0" });
 * assert.equal(new TextDecoder("latin1").decode(bytes.slice(0, 8)), "%PDF-1.7");
 * ```
 */
export function renderPdf(
  drawing: Drawing,
  { typefaces, madeOn, creator, onPage }: RenderPdfOptions,
): Promise<Uint8Array> {
  const pdf = new PDFDocument({
    autoFirstPage: false,
    font: null,
    pdfVersion: "1.7",
    tagged: true,
    displayTitle: true,
    lang: drawing.language,
    info: { Title: drawing.title, Creator: creator, Producer: creator, CreationDate: noonOf(madeOn) },
  });
  const bytes = collect(pdf);
  const preferences = pdf._root.data.ViewerPreferences as { data: Record<string, unknown> };
  // Viewers that obey it open the print dialogue at 100 %.
  preferences.data.PrintScaling = "None";
  preferences.data.PickTrayByPDFSize = true;
  for (const font of ["regular", "bold"] as const) {
    for (const [file, own] of typefaces.files[font].entries()) pdf.registerFont(fontKey({ font, file }), own);
  }
  const whole = pdf.struct("Document", {});
  pdf.addStructure(whole);
  const labels: unknown[] = [];
  for (const [index, page] of drawing.pages.entries()) {
    labels.push(index, { P: new String(page.label) });
    addPage({ pdf, page, whole, typefaces });
    onPage?.(index + 1, drawing.pages.length);
  }
  whole.end();
  pdf._root.data.PageLabels = { Nums: labels };
  pdf.end();
  return bytes;
}

function noonOf(day: string): Date {
  const [year = 0, month = 1, date = 1] = day.split("-").map(Number);
  return new Date(Date.UTC(year, month - 1, date, 12));
}

function collect(pdf: PDFDocument): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve, reject) => {
    pdf.on("data", (chunk) => chunks.push(chunk));
    pdf.on("error", reject);
    pdf.on("end", () => {
      const whole = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
      let offset = 0;
      for (const chunk of chunks) {
        whole.set(chunk, offset);
        offset += chunk.length;
      }
      resolve(whole);
    });
  });
}

function addPage(given: {
  pdf: PDFDocument;
  page: Page;
  whole: StructureElement;
  typefaces: Typefaces;
}): void {
  const { pdf, page, whole, typefaces } = given;
  pdf.addPage({ size: [page.widthMm / pointMm, page.heightMm / pointMm], margin: 0 });
  // A screen reader follows the structure, in the order of the list.
  pdf.page.dictionary.data.Tabs = "S";
  pdf.save().scale(1 / pointMm);
  addRuns({ pdf, typefaces, whole, items: page.items, clips: [], spaced: false });
  pdf.restore();
}

interface Context {
  readonly pdf: PDFDocument;
  readonly typefaces: Typefaces;
  readonly clips: readonly Box[];
  /** Whether a space follows each line, as in a paragraph that is read out. */
  readonly spaced: boolean;
}

interface PageContext extends Context {
  readonly whole: StructureElement;
}

/** Items outside any structure: roled groups become elements, the rest is marked run by run. */
function addRuns({ items, ...context }: PageContext & { readonly items: readonly Item[] }): void {
  const { pdf, whole } = context;
  for (const item of items) {
    if (item.kind === "group" && item.role !== undefined) {
      whole.add(elementOf(context, item, item.role));
    } else if (item.kind === "group" && !item.under && hasText(item)) {
      addRuns({ ...context, items: item.items, clips: clipsOf(context, item) });
    } else if (item.kind === "text") {
      whole.add(pdf.struct("P", {}, [() => drawPlain(context, [item])]));
    } else {
      pdf.markContent("Artifact");
      drawPlain(context, [item]);
      pdf.endMarkedContent();
    }
  }
}

function elementOf(context: Context, { items, alt, language, ...rest }: Group, role: Role): StructureElement {
  const spaced = role === "P" || (role === "Span" && context.spaced);
  const inner = { ...context, clips: clipsOf(context, rest), spaced };
  // A figure is one thing, told in words; its parts are not read out one by one.
  const children = role === "Figure" ? [() => drawPlain(inner, items)] : childrenOf(inner, items);
  const told = { ...(alt !== undefined && { alt }), ...(language !== undefined && { lang: language }) };
  return context.pdf.struct(role, told, children);
}

function childrenOf(context: Context, items: readonly Item[]): StructureChild[] {
  const children: StructureChild[] = [];
  let run: Item[] = [];
  const flush = (): void => {
    if (run.length === 0) return;
    const own = run;
    children.push(() => drawPlain(context, own));
    run = [];
  };
  for (const item of items) {
    if (item.kind === "group" && item.role !== undefined) {
      flush();
      children.push(elementOf(context, item, item.role));
    } else if (item.kind === "group" && hasRole(item)) {
      flush();
      children.push(...childrenOf({ ...context, clips: clipsOf(context, item) }, item.items));
    } else {
      run.push(item);
    }
  }
  flush();
  return children;
}

/** Draws items without any marking of their own, inside the clips of the groups round them. */
function drawPlain(context: Context, items: readonly Item[]): void {
  const { pdf, typefaces, clips, spaced } = context;
  for (const { xMm, yMm, widthMm, heightMm } of clips) pdf.save().rect(xMm, yMm, widthMm, heightMm).clip();
  for (const item of items) {
    if (item.kind === "group") {
      drawPlain({ ...context, clips: item.clip === undefined ? [] : [item.clip] }, item.items);
    } else {
      drawLeaf({ pdf, item, typefaces, spaced });
    }
  }
  for (const _ of clips) pdf.restore();
}

function clipsOf({ clips }: Context, { clip }: Pick<Group, "clip">): readonly Box[] {
  return clip === undefined ? clips : [...clips, clip];
}

function hasText(item: Item): boolean {
  return item.kind === "text" || (item.kind === "group" && item.items.some(hasText));
}

function hasRole(item: Group): boolean {
  return item.items.some((inner) => inner.kind === "group" && (inner.role !== undefined || hasRole(inner)));
}
