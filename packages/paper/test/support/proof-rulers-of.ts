import type { ReadPage } from "./read-pdf.ts";

export interface ReadProofRuler {
  readonly axis: "across" | "along";
  /** From the first to the last tick of either side, pt. */
  readonly hundredMmPt: number;
  readonly fourInPt: number;
}

const inchMm = 25.4;
const mmPt = 72 / inchMm;

/** The proof rulers of a page as they stand in the PDF: a line of 4 in with 101 ticks on one side and 17 on the other. */
export function proofRulersOf({ paths }: ReadPage): readonly ReadProofRuler[] {
  const lines = paths.flatMap(({ painted, subpaths }) =>
    painted === "stroke"
      ? subpaths.flatMap((points) => (points.length === 2 ? [points as [Point, Point]] : []))
      : [],
  );
  const bodies = lines.filter(([a, b]) => Math.abs(distance(a, b) - 4 * inchMm) < 0.005);
  return bodies.flatMap((body) => {
    const [start, end] = body;
    const axis = Math.abs(start[1] - end[1]) < 0.01 ? ("across" as const) : ("along" as const);
    const [own, other] = axis === "across" ? ([0, 1] as const) : ([1, 0] as const);
    const ticks = lines.filter(
      ([a, b]) =>
        Math.abs(a[own] - b[own]) < 0.001 &&
        Math.abs(a[other] - start[other]) < 0.001 &&
        distance(a, b) > 1 &&
        distance(a, b) < 3 &&
        Math.abs(a[own] - start[own]) < 102,
    );
    const side = (sign: 1 | -1): number[] =>
      ticks
        .filter(([a, b]) => Math.sign(b[other] - a[other]) === sign)
        .map(([a]) => Math.abs(a[own] - start[own]))
        .sort((a, b) => a - b);
    const [mm, inches] = [side(-1), side(1)];
    if (mm.length !== 101 || inches.length !== 17) return [];
    const evenly = (places: readonly number[], stepMm: number): boolean =>
      places.every((place, i) => Math.abs(place - i * stepMm) < 0.01);
    if (!evenly(mm, 1) || !evenly(inches, inchMm / 4)) return [];
    return [
      {
        axis,
        hundredMmPt: ((mm[100] as number) - (mm[0] as number)) * mmPt,
        fourInPt: ((inches[16] as number) - (inches[0] as number)) * mmPt,
      },
    ];
  });
}

type Point = readonly [number, number];

function distance([x1, y1]: Point, [x2, y2]: Point): number {
  return Math.hypot(x2 - x1, y2 - y1);
}
