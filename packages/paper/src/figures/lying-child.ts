import type { Item, Path, Point, Segment, Stroke } from "../drawing/item.ts";
import { ink, paperWhite } from "../drawing/palette.ts";
import { line, polyline } from "../drawing/shapes.ts";

const outline: Stroke = { colour: ink, widthMm: 0.4, cap: "round" };

/** Where the parts of the drawn child are, for arrows and marks. */
export interface LyingChild {
  readonly items: readonly Item[];
  readonly crown: Point;
  readonly heel: Point;
  /** Middle of the upper arm, on its outer side. */
  readonly arm: Point;
}

/** A child on its back seen from above, crown at the left, heels at the right, feet up; our own drawing. */
export function drawLyingChild({
  at,
  lengthMm,
}: {
  readonly at: Point;
  readonly lengthMm: number;
}): LyingChild {
  const [x0, y0] = at;
  const k = lengthMm / 100;
  const p = (x: number, y: number): Point => [x0 + x * k, y0 + y * k];
  const smooth = (points: readonly Point[], closed: boolean): Path => ({
    kind: "path",
    segments: throughPoints(points, closed),
    stroke: outline,
    fill: paperWhite,
  });
  const head = smooth(
    [p(0, 0), p(3, -6.5), p(10, -7.6), p(16, -4.5), p(17.2, 0), p(16, 4.5), p(10, 7.6), p(3, 6.5)],
    true,
  );
  const arm = (side: 1 | -1): Path =>
    smooth(
      [
        p(21.5, side * 9),
        p(24, side * 12.6),
        p(33, side * 14.6),
        p(42, side * 15.4),
        p(51, side * 15.2),
        p(54, side * 13.8),
        p(51, side * 12.2),
        p(42, side * 11.6),
        p(33, side * 10.4),
        p(26, side * 8.4),
      ],
      true,
    );
  const leg = (side: 1 | -1): Path =>
    smooth(
      [
        p(52, side * 8.6),
        p(62, side * 8.8),
        p(72, side * 7.4),
        p(82, side * 7),
        p(94, side * 5.8),
        p(98.5, side * 6.2),
        p(100, side * 4.2),
        p(98.5, side * 2.2),
        p(94, side * 2.4),
        p(82, side * 1.8),
        p(72, side * 1.4),
        p(58, side * 0.4),
      ],
      true,
    );
  const trunk = smooth(
    [
      p(18.5, -3),
      p(20.5, -8.4),
      p(24, -9.8),
      p(34, -8.6),
      p(44, -8),
      p(54, -9.2),
      p(57, -5),
      p(57, 5),
      p(54, 9.2),
      p(44, 8),
      p(34, 8.6),
      p(24, 9.8),
      p(20.5, 8.4),
      p(18.5, 3),
    ],
    true,
  );
  const neck = polyline([p(15.5, -3), p(20, -3.2), p(20, 3.2), p(15.5, 3)], {
    stroke: outline,
    fill: paperWhite,
  });
  // The tape round the middle of the upper arm.
  const tape = [
    line(p(33.2, 10.2), p(32.8, 14.9), { ...outline, widthMm: 0.9 }),
    line(p(35, 10.4), p(34.6, 15.1), { ...outline, widthMm: 0.3 }),
  ];
  return {
    items: [arm(-1), arm(1), leg(-1), leg(1), neck, trunk, head, ...tape],
    crown: p(0, 0),
    heel: p(100, 4.2),
    arm: p(33.5, 15),
  };
}

/** A closed or open smooth line through points (Catmull-Rom as Beziers). */
export function throughPoints(points: readonly Point[], closed: boolean): readonly Segment[] {
  const n = points.length;
  const of = (i: number): Point => points[closed ? (i + n) % n : Math.min(Math.max(i, 0), n - 1)] as Point;
  const segments: Segment[] = [["M", ...of(0)]];
  for (let i = 0; i < (closed ? n : n - 1); i += 1) {
    const [a, b, c, d] = [of(i - 1), of(i), of(i + 1), of(i + 2)];
    segments.push([
      "C",
      b[0] + (c[0] - a[0]) / 6,
      b[1] + (c[1] - a[1]) / 6,
      c[0] - (d[0] - b[0]) / 6,
      c[1] - (d[1] - b[1]) / 6,
      ...c,
    ]);
  }
  if (closed) segments.push(["Z"]);
  return segments;
}
