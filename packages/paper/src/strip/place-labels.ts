import type { Point, Text } from "../drawing/item.ts";
import { setText, type TextLook } from "../drawing/set-text.ts";
import { textCorners } from "../drawing/text-box.ts";
import { overlapDepth, type TurnedBox } from "../drawing/turned-box.ts";
import type { Typefaces } from "../drawing/typefaces.ts";
import { curveAt, curveEndCm } from "./curve-path.ts";
import type { Curve } from "./trace-contours.ts";

/** A label that stands on the chart, in mm from the chart's left edge and from the head line. */
export interface Label {
  readonly text: Text;
  /** Round the text with some air: nothing else may enter it, and lines stop at it. */
  readonly box: TurnedBox;
}

/** Places labels one after another, each where none stands yet. */
export interface LabelBoard {
  readonly labels: readonly Label[];
  /** Puts the text there unless it would stand on another; says whether it did. */
  put(text: Text): boolean;
}

const airMm = 0.5;

export function createLabelBoard(typefaces: Typefaces): LabelBoard {
  const labels: Label[] = [];
  // By the 20 mm of the strip that they reach, so that only near ones are compared.
  const shelves = new Map<number, Label[]>();
  return {
    labels,
    put(text) {
      const box = withAir(textCorners(text, typefaces));
      const ys = box.map(([, y]) => y);
      const [first, last] = [Math.floor(Math.min(...ys) / 20), Math.floor(Math.max(...ys) / 20)];
      for (let shelf = first; shelf <= last; shelf += 1) {
        if (shelves.get(shelf)?.some((other) => overlapDepth(other.box, box) > 0)) return false;
      }
      const label: Label = { text, box };
      labels.push(label);
      for (let shelf = first; shelf <= last; shelf += 1) {
        const own = shelves.get(shelf) ?? [];
        own.push(label);
        shelves.set(shelf, own);
      }
      return true;
    },
  };
}

function withAir(box: TurnedBox): TurnedBox {
  const [a, b, c, d] = box;
  const along = unit(a, b);
  const down = unit(a, d);
  const move = ([x, y]: Point, right: number, below: number): Point => [
    x + airMm * (right * along[0] + below * down[0]),
    y + airMm * (right * along[1] + below * down[1]),
  ];
  return [move(a, -1, -0.5), move(b, 1, -0.5), move(c, 1, 0.5), move(d, -1, 0.5)];
}

function unit([x1, y1]: Point, [x2, y2]: Point): Point {
  const length = Math.hypot(x2 - x1, y2 - y1) || 1;
  return [(x2 - x1) / length, (y2 - y1) / length];
}

export interface AlongCurve {
  readonly typefaces: Typefaces;
  readonly board: LabelBoard;
  readonly curve: Curve;
  readonly widthMm: number;
  readonly words: string;
  readonly look: TextLook;
  /** Distance from label to label, cm, and where the first may stand. */
  readonly everyCm: number;
  readonly startCm: number;
  readonly allowed: (at: { readonly lengthCm: number; readonly across: number }) => boolean;
}

/** Labels on a curve, turned with it, as near to every so many centimetres as there is room. */
export function labelCurve(given: AlongCurve): number {
  const { curve, everyCm, startCm } = given;
  const endCm = curveEndCm(curve);
  let count = 0;
  for (let wantedCm = curve.fromCm + startCm; wantedCm < endCm; wantedCm += everyCm) {
    for (let shift = 0; shift < everyCm / 2; shift += 0.35) {
      const tries = shift === 0 ? [wantedCm] : [wantedCm + shift, wantedCm - shift];
      if (tries.some((lengthCm) => putOnCurve(given, lengthCm))) {
        count += 1;
        break;
      }
    }
  }
  return count;
}

function putOnCurve(given: AlongCurve, lengthCm: number): boolean {
  const { typefaces, board, curve, widthMm, words, look, allowed } = given;
  if (lengthCm < curve.fromCm || lengthCm > curveEndCm(curve)) return false;
  const { across, slope } = curveAt(curve, lengthCm);
  if (!allowed({ lengthCm, across })) return false;
  const sizeMm = ((look.sizePt ?? 9) * 25.4) / 72;
  // Upwards along the line, so that all are read with the head turned the same way.
  const angle = Math.atan2(-10, -slope * widthMm);
  const half = (typefaces.capHeight * sizeMm) / 2;
  // The middle of the figures, not their feet, stands on the line.
  const at: Point = [across * widthMm - half * Math.sin(angle), lengthCm * 10 + half * Math.cos(angle)];
  const angleDeg = (angle * 180) / Math.PI;
  return board.put(setText(typefaces, words, at, { ...look, anchor: "middle", angleDeg }));
}
