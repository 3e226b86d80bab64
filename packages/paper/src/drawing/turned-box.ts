import type { Point } from "./item.ts";

/** Four corners in order. */
export type TurnedBox = readonly [Point, Point, Point, Point];

/** How deep two turned rectangles lie in one another, mm: the least overlap of their shadows along either's sides; 0 when apart. */
export function overlapDepth(a: readonly Point[], b: readonly Point[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [dx, dy] of [...normals(a), ...normals(b)]) {
    const [lowA, highA] = shadow(a, dx, dy);
    const [lowB, highB] = shadow(b, dx, dy);
    least = Math.min(least, Math.min(highA, highB) - Math.max(lowA, lowB));
    if (least <= 0) return 0;
  }
  return least;
}

/** Whether a point lies in a turned box. */
export function contains(box: TurnedBox, [x, y]: Point): boolean {
  const [origin, right, , below] = box;
  const along = (to: Point): number => {
    const [dx, dy] = [to[0] - origin[0], to[1] - origin[1]];
    return ((x - origin[0]) * dx + (y - origin[1]) * dy) / (dx * dx + dy * dy);
  };
  const [u, v] = [along(right), along(below)];
  return u >= 0 && u <= 1 && v >= 0 && v <= 1;
}

function shadow(corners: readonly Point[], dx: number, dy: number): readonly [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const [x, y] of corners) {
    const value = x * dx + y * dy;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return [low, high];
}

function normals(corners: readonly Point[]): Point[] {
  return [0, 1].map((i) => {
    const [x1, y1] = corners[i] as Point;
    const [x2, y2] = corners[i + 1] as Point;
    const length = Math.hypot(x2 - x1, y2 - y1) || 1;
    return [(y2 - y1) / length, (x1 - x2) / length];
  });
}
