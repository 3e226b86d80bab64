/// <reference path="./pdfkit.d.ts" />
import type { PDFDocument } from "pdfkit";
import type { Group, Item, Path, Rectangle, Stroke, Text } from "../drawing/item.ts";
import { pointMm } from "../drawing/shapes.ts";
import { startOf } from "../drawing/text-box.ts";
import type { FontRun, Typefaces } from "../drawing/typefaces.ts";

/** Name of a font file inside the PDF library. */
export function fontKey({ font, file }: Pick<FontRun, "font" | "file">): string {
  return `${font}-${file}`;
}

/** One line, path, rectangle or text into the page, in mm. */
export function drawLeaf(given: {
  pdf: PDFDocument;
  item: Exclude<Item, Group>;
  typefaces: Typefaces;
  /** Whether a space follows the text, which a screen reader needs between lines. */
  spaced: boolean;
}): void {
  const { pdf, item } = given;
  switch (item.kind) {
    case "line":
      pdf.moveTo(...mm(item.from)).lineTo(...mm(item.to));
      paint(pdf, item);
      return;
    case "path":
      drawPath(pdf, item);
      return;
    case "rectangle":
      drawRectangle(pdf, item);
      return;
    case "text":
      drawText({ ...given, item });
  }
}

/** To 0.001 mm, so that the file holds no digits that mean nothing. */
function rounded(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function mm([xMm, yMm]: readonly [number, number]): [number, number] {
  return [rounded(xMm), rounded(yMm)];
}

function drawPath(pdf: PDFDocument, path: Path): void {
  for (const segment of path.segments) {
    const [command, ...numbers] = segment;
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = numbers.map(rounded);
    if (command === "M") pdf.moveTo(a, b);
    else if (command === "L") pdf.lineTo(a, b);
    else if (command === "C") pdf.bezierCurveTo(a, b, c, d, e, f);
    else pdf.closePath();
  }
  paint(pdf, path);
}

function drawRectangle(pdf: PDFDocument, { radiusMm, ...box }: Rectangle): void {
  const [x, y] = mm([box.xMm, box.yMm]);
  const [width, height] = mm([box.widthMm, box.heightMm]);
  if (radiusMm === undefined) pdf.rect(x, y, width, height);
  else pdf.roundedRect(x, y, width, height, radiusMm);
  paint(pdf, box);
}

function paint(pdf: PDFDocument, { stroke, fill }: { stroke?: Stroke; fill?: string }): void {
  if (stroke !== undefined) {
    pdf.lineWidth(stroke.widthMm).lineCap(stroke.cap ?? "butt");
    pdf.lineJoin(stroke.cap === "round" ? "round" : "miter");
    if (stroke.dashMm !== undefined) pdf.dash(stroke.dashMm);
  }
  if (stroke !== undefined && fill !== undefined) pdf.fillAndStroke(fill, stroke.colour);
  else if (stroke !== undefined) pdf.stroke(stroke.colour);
  else if (fill !== undefined) pdf.fill(fill);
  if (stroke?.dashMm !== undefined) pdf.undash();
}

function drawText(given: { pdf: PDFDocument; item: Text; typefaces: Typefaces; spaced: boolean }): void {
  const { pdf, item, typefaces, spaced } = given;
  const { font, sizePt, angleDeg } = item;
  const [xMm, yMm] = mm(item.at);
  if (angleDeg !== undefined) pdf.save().rotate(angleDeg, { origin: [xMm, yMm] });
  pdf.fillColor(item.colour).fontSize(sizePt * pointMm);
  let x = xMm + startOf(item);
  const text = spaced ? `${item.text} ` : item.text;
  for (const run of typefaces.runs(text, { font, sizePt })) {
    pdf.font(fontKey(run)).text(run.text, rounded(x), yMm, { lineBreak: false, baseline: "alphabetic" });
    x += run.widthMm;
  }
  if (angleDeg !== undefined) pdf.restore();
}
