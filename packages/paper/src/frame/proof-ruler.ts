import type { Group, Item, Line, Point } from "../drawing/item.ts";
import { setText } from "../drawing/set-text.ts";
import { group, line, strokes } from "../drawing/shapes.ts";
import type { SheetContext } from "./sheet-context.ts";

/** An inch is 25.4 mm exactly. */
const inchMm = 25.4;
const proofMm = 100;
const proofIn = 4;
/** Length of the ruler along its axis, mm. */
export const proofRulerLengthMm: number = proofIn * inchMm;
/** From the middle line to the outer edge of its figures, mm. */
export const proofRulerHalfMm = 4.6;

/**
 * A ruler of 100 mm on one side and 4 in on the other, by which a sheet proves that it was printed true.
 *
 * From its zero at `at` it runs right (`across`) or up the page (`along`); its middle line is on `at`. Ticks every
 * millimetre and every quarter of an inch, exactly on their place.
 */
export function drawProofRuler(
  { typefaces, messages }: SheetContext,
  { axis, at }: { readonly axis: "across" | "along"; readonly at: Point },
): Group {
  const place = (alongMm: number, outMm: number): Point =>
    axis === "across" ? [at[0] + alongMm, at[1] + outMm] : [at[0] + outMm, at[1] - alongMm];
  const items: Item[] = [line(place(0, 0), place(proofRulerLengthMm, 0), strokes.plain)];
  for (let mm = 0; mm <= proofMm; mm += 1) items.push(tick(place, mm, -tickMm(mm, 10, 5)));
  for (let quarter = 0; quarter <= proofIn * 4; quarter += 1) {
    items.push(tick(place, (quarter * inchMm) / 4, tickMm(quarter, 4, 2)));
  }
  const angleDeg = axis === "across" ? 0 : -90;
  const figure = (text: string, alongMm: number, outMm: number, anchor: "start" | "middle" | "end"): Item =>
    setText(typefaces, text, place(alongMm, outMm), { sizePt: 5.5, anchor, angleDeg });
  const { millimetres, inches, rulerAcross, rulerAlong } = messages.frame;
  items.push(figure(`0 ${millimetres}`, 0, -2.9, "start"));
  for (let mm = 20; mm <= proofMm; mm += 20) items.push(figure(String(mm), mm, -2.9, "middle"));
  items.push(figure(`0 ${inches}`, 0, 4.4, "start"));
  for (let inch = 1; inch <= proofIn; inch += 1) {
    items.push(figure(String(inch), inch * inchMm, 4.4, "middle"));
  }
  return group(items, { role: "Figure", alt: axis === "across" ? rulerAcross : rulerAlong });
}

/** Long at whole tens or inches, middling at the halves. */
function tickMm(count: number, whole: number, half: number): number {
  return count % whole === 0 ? 2.4 : count % half === 0 ? 1.8 : 1.2;
}

function tick(place: (alongMm: number, outMm: number) => Point, alongMm: number, lengthMm: number): Line {
  return line(place(alongMm, 0), place(alongMm, lengthMm), strokes.fine);
}
