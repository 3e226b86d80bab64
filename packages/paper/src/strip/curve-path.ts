import type { Point, Segment } from "../drawing/item.ts";
import type { Curve } from "./trace-contours.ts";

/** From here to there along the strip, cm. */
export interface Stretch {
  readonly fromCm: number;
  readonly toCm: number;
}

/** Where the curve is across the chart at a length within its ends, with its slope per cm. */
export function curveAt(curve: Curve, lengthCm: number): { readonly across: number; readonly slope: number } {
  const { fromCm, stepCm, across } = curve;
  const position = Math.min(Math.max((lengthCm - fromCm) / stepCm, 0), across.length - 1);
  const i = Math.min(Math.floor(position), across.length - 2);
  const t = position - i;
  const [a, b] = [across[i] as number, across[i + 1] as number];
  const [da, db] = [tangent(curve, i), tangent(curve, i + 1)];
  return {
    across:
      a * (1 - t) ** 2 * (1 + 2 * t) +
      b * t ** 2 * (3 - 2 * t) +
      da * t * (1 - t) ** 2 -
      db * t ** 2 * (1 - t),
    slope: (6 * t * (1 - t) * (b - a) + da * (1 - t) * (1 - 3 * t) + db * t * (3 * t - 2)) / stepCm,
  };
}

/** End of a curve along the strip, cm. */
export function curveEndCm({ fromCm, stepCm, across }: Curve): number {
  return fromCm + (across.length - 1) * stepCm;
}

/** Change over one step at a point, by its neighbours. */
function tangent({ across }: Curve, i: number): number {
  const before = Math.max(i - 1, 0);
  const after = Math.min(i + 1, across.length - 1);
  return ((across[after] as number) - (across[before] as number)) / (after - before);
}

/**
 * The stretches of a curve as Bezier segments on the page; the curve passes through every row exactly and bends smoothly.
 *
 * Each piece is a cubic in the length with the length itself running straight, so that reading it back is simple.
 */
export function curvePath(given: {
  readonly curve: Curve;
  readonly stretches: readonly Stretch[];
  readonly place: (at: { readonly lengthCm: number; readonly across: number }) => Point;
}): readonly Segment[] {
  const { curve, stretches, place } = given;
  const segments: Segment[] = [];
  for (const stretch of stretches) {
    const fromCm = Math.max(stretch.fromCm, curve.fromCm);
    const toCm = Math.min(stretch.toCm, curveEndCm(curve));
    if (toCm - fromCm < 1e-6) continue;
    const start = place({ lengthCm: fromCm, across: curveAt(curve, fromCm).across });
    segments.push(["M", ...fine(start)]);
    let at = fromCm;
    while (at < toCm - 1e-6) {
      const next = spanEnd(given, at, toCm);
      segments.push(["C", ...bezier(given, at, next).flatMap(fine)] as unknown as Segment);
      at = next;
    }
  }
  return segments;
}

interface PlacedCurve {
  readonly curve: Curve;
  readonly place: (at: { readonly lengthCm: number; readonly across: number }) => Point;
}

/** The two control points and the end of the cubic from one length to another. */
function bezier({ curve, place }: PlacedCurve, fromCm: number, toCm: number): [Point, Point, Point] {
  const h = toCm - fromCm;
  // A hair inside the piece, so that the slope is that of this piece at either end.
  const a = curveAt(curve, fromCm + h * 1e-9);
  const b = curveAt(curve, toCm - h * 1e-9);
  return [
    place({ lengthCm: fromCm + h / 3, across: a.across + (a.slope * h) / 3 }),
    place({ lengthCm: toCm - h / 3, across: b.across - (b.slope * h) / 3 }),
    place({ lengthCm: toCm, across: b.across }),
  ];
}

/** How far one cubic may leave the curve between rows, mm: a fifth of the width of the finest line. */
const toleranceMm = 0.02;

/** The longest of 8, 4, 2 and 1 rows that one cubic follows within the tolerance. */
function spanEnd(given: PlacedCurve, atCm: number, endCm: number): number {
  const { curve, place } = given;
  const row = Math.floor((atCm - curve.fromCm) / curve.stepCm + 1e-6);
  for (const rows of [8, 4, 2]) {
    const next = Math.min(curve.fromCm + (row + rows) * curve.stepCm, endCm);
    const start = place({ lengthCm: atCm, across: curveAt(curve, atCm).across });
    const [c1, c2, end] = bezier(given, atCm, next);
    const follows = [0.15, 0.3, 0.5, 0.7, 0.85].every((t) => {
      const s = 1 - t;
      const x = s ** 3 * start[0] + 3 * s * s * t * c1[0] + 3 * s * t * t * c2[0] + t ** 3 * end[0];
      const lengthCm = atCm + t * (next - atCm);
      return Math.abs(x - place({ lengthCm, across: curveAt(curve, lengthCm).across })[0]) < toleranceMm;
    });
    if (follows) return next;
  }
  return Math.min(curve.fromCm + (row + 1) * curve.stepCm, endCm);
}

/** To 0.01 mm: a tenth of the width of the finest line, and a third of the file less. */
function fine([xMm, yMm]: Point): Point {
  return [Math.round(xMm * 100) / 100, Math.round(yMm * 100) / 100];
}
