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
    [p(0, 0), p(2.6, -5.6), p(9, -7.4), p(15, -5.2), p(17.4, 0), p(15, 5.2), p(9, 7.4), p(2.6, 5.6)],
    true,
  );
  const face = [
    line(p(8.6, -3), p(10.6, -3), { ...outline, widthMm: 0.3 }),
    line(p(8.6, 3), p(10.6, 3), { ...outline, widthMm: 0.3 }),
    polyline([p(9.4, 0), p(12, -0.9), p(12, 0.6)], { stroke: { ...outline, widthMm: 0.3 } }),
    polyline([p(14.2, -1.6), p(14.7, 0), p(14.2, 1.6)], { stroke: { ...outline, widthMm: 0.3 } }),
  ];
  const ears = [-1, 1].map((side) =>
    smooth([p(8.4, side * 7), p(9.4, side * 8.6), p(11.2, side * 8.2), p(11.4, side * 6.6)], true),
  );
  const arm = (side: 1 | -1): Path =>
    smooth(
      [
        p(21, side * 6),
        p(21.6, side * 9.4),
        p(25, side * 12.2),
        p(34, side * 14),
        p(43, side * 14.6),
        p(48.5, side * 14.4),
        p(53, side * 15.4),
        p(56.4, side * 14.2),
        p(56, side * 11.8),
        p(50, side * 11.4),
        p(43, side * 10.8),
        p(35, side * 9.6),
        p(28, side * 7),
      ],
      true,
    );
  const leg = (side: 1 | -1): Path =>
    smooth(
      [
        p(50, side * 8.4),
        p(60, side * 8.8),
        p(70, side * 7.6),
        p(77, side * 6.8),
        p(84, side * 6.8),
        p(93, side * 5.6),
        p(96.6, side * 6.4),
        p(99.6, side * 6),
        p(100, side * 4.2),
        p(99.6, side * 2.2),
        p(96.6, side * 1.8),
        p(93, side * 2.6),
        p(84, side * 2),
        p(77, side * 1.8),
        p(66, side * 1),
        p(56, side * 0.2),
      ],
      true,
    );
  const trunk = smooth(
    [
      p(19, -2.6),
      p(20.6, -6.6),
      p(24.5, -9),
      p(33, -8.2),
      p(43, -7.6),
      p(52, -8.8),
      p(57.5, -6.4),
      p(60, 0),
      p(57.5, 6.4),
      p(52, 8.8),
      p(43, 7.6),
      p(33, 8.2),
      p(24.5, 9),
      p(20.6, 6.6),
      p(19, 2.6),
    ],
    true,
  );
  const neck = polyline([p(16.2, -2.8), p(19.8, -3), p(19.8, 3), p(16.2, 2.8)], {
    stroke: outline,
    fill: paperWhite,
  });
  // The tape round the middle of the upper arm.
  const tape = [
    line(p(35.6, 9.7), p(35.2, 14.1), { ...outline, widthMm: 1 }),
    line(p(37.4, 10), p(37, 14.2), { ...outline, widthMm: 0.3 }),
  ];
  return {
    items: [leg(-1), leg(1), arm(-1), arm(1), trunk, neck, ...ears, head, ...face, ...tape],
    crown: p(0, 0),
    heel: p(100, 4.2),
    arm: p(36, 14.2),
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
