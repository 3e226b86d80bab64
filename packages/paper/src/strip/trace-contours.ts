import { type ContourLevel, contourLevels } from "./contour-levels.ts";
import type { WeightSurface } from "./weight-surface.ts";

/** A curve that runs along the strip: its place across (0 to 1) at lengths one row apart. */
export interface Curve {
  readonly fromCm: number;
  readonly stepCm: number;
  readonly across: readonly number[];
}

export interface Contour extends ContourLevel, Curve {}

/** The lines of equal total weight over the whole chart, lightest first; each as far as the surface reaches. */
export function traceContours(surface: WeightSurface): readonly Contour[] {
  const { rows, lengthsCm } = surface;
  const all = rows.flat();
  const levels = contourLevels({ lowKg: Math.exp(Math.min(...all)), highKg: Math.exp(Math.max(...all)) });
  const [firstCm = 0, secondCm = 0] = lengthsCm;
  return levels.flatMap((level) => {
    const places = rows.map((_, row) => surface.acrossOf(row, Math.log(level.kg)));
    const first = places.findIndex((place) => place !== undefined);
    const last = places.findLastIndex((place) => place !== undefined);
    if (last - first < 1) return [];
    const across = places.slice(first, last + 1) as number[];
    return [{ ...level, fromCm: lengthsCm[first] as number, stepCm: secondCm - firstCm, across }];
  });
}
