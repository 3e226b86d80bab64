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
      a * (1 - t) ** 2 * (1 + 2 * t) + b * t ** 2 * (3 - 2 * t) + da * t * (1 - t) ** 2 - db * t ** 2 * (1 - t),
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
      const row = Math.floor((at - curve.fromCm) / curve.stepCm + 1e-6);
      const next = Math.min(curve.fromCm + (row + 1) * curve.stepCm, toCm);
      const h = next - at;
      // A hair inside the piece, so that the slope is that of this piece at either end.
      const a = curveAt(curve, at + h * 1e-9);
      const b = curveAt(curve, next - h * 1e-9);
      const c1 = place({ lengthCm: at + h / 3, across: a.across + (a.slope * h) / 3 });
      const c2 = place({ lengthCm: next - h / 3, across: b.across - (b.slope * h) / 3 });
      const end = place({ lengthCm: next, across: b.across });
      segments.push(["C", ...fine(c1), ...fine(c2), ...fine(end)]);
      at = next;
    }
  }
  return segments;
}

/** To 0.01 mm: a tenth of the width of the finest line, and a third of the file less. */
function fine([xMm, yMm]: Point): Point {
  return [Math.round(xMm * 100) / 100, Math.round(yMm * 100) / 100];
}
