import type { Item, Point, Stroke } from "../drawing/item.ts";
import { ink, shade } from "../drawing/palette.ts";
import { line, polyline } from "../drawing/shapes.ts";
import { throughPoints } from "./lying-child.ts";

const outline: Stroke = { colour: ink, widthMm: 0.4, cap: "round" };

/** Where the parts of the drawn arm are, for words and marks. */
export interface MeasuredArm {
  readonly items: readonly Item[];
  readonly shoulder: Point;
  readonly elbow: Point;
  readonly middle: Point;
  readonly tapeRight: Point;
}

/** An upper arm hanging at the side, seen from behind, with the tape round its middle; our own drawing. */
export function drawMeasuredArm({
  at,
  heightMm,
}: {
  readonly at: Point;
  readonly heightMm: number;
}): MeasuredArm {
  const k = heightMm / 100;
  const p = (x: number, y: number): Point => [at[0] + x * k, at[1] + y * k];
  const arm: Item = {
    kind: "path",
    segments: throughPoints(
      [
        p(4, 4),
        p(16, 0),
        p(27, 4),
        p(33, 14),
        p(34.4, 28),
        p(33.4, 44),
        p(30.4, 58),
        p(30.6, 66),
        p(31.4, 76),
        p(28.6, 92),
        p(27.4, 100),
      ],
      false,
    ),
    stroke: outline,
  };
  const inner: Item = {
    kind: "path",
    segments: throughPoints(
      [p(11.4, 22), p(13.2, 34), p(15.4, 48), p(17.4, 60), p(16.4, 68), p(15.4, 78), p(17, 92), p(17.4, 100)],
      false,
    ),
    stroke: outline,
  };
  const chest: Item = {
    kind: "path",
    segments: throughPoints([p(11.4, 22), p(8.6, 40), p(6, 62)], false),
    stroke: outline,
  };
  const shoulder = p(28.4, 5.6);
  const elbow = p(27.6, 62);
  const middle = p(34.2, 34);
  const dot = ([x, y]: Point): Item => ({
    kind: "rectangle",
    xMm: x - 1,
    yMm: y - 1,
    widthMm: 2,
    heightMm: 2,
    radiusMm: 1,
    fill: ink,
  });
  const tape = polyline([p(13, 31.8), p(34.3, 31.8), p(34.2, 36.2), p(13.6, 36.2)], {
    closed: true,
    stroke: { ...outline, widthMm: 0.25 },
    fill: shade,
  });
  const ticks = Array.from({ length: 9 }, (_, i) =>
    line(p(15 + i * 2.2, 31.8), p(15 + i * 2.2, 33.6), { ...outline, widthMm: 0.15 }),
  );
  const bone = line(shoulder, elbow, { ...outline, widthMm: 0.2, dashMm: [1, 1] });
  return {
    items: [arm, inner, chest, tape, ...ticks, bone, dot(shoulder), dot(elbow)],
    shoulder,
    elbow,
    middle,
    tapeRight: p(34.4, 34),
  };
}
