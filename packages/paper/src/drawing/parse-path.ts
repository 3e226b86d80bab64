import type { Point, Segment } from "./item.ts";

const numbersOf: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, Q: 4, T: 2, C: 6, Z: 0 };

/**
 * The segments of an SVG path: M, L, H, V, Q, T, C and Z, absolute and relative.
 *
 * Throws a `RangeError` on any other command and on a wrong count of numbers.
 */
export function parsePath(d: string, place: (at: Point) => Point): readonly Segment[] {
  const segments: Segment[] = [];
  let at: Point = [0, 0];
  let start: Point = [0, 0];
  let control: Point | undefined;
  for (const [, letter = "", rest = ""] of d.matchAll(/([a-zA-Z])([^a-zA-Z]*)/g)) {
    const upper = letter.toUpperCase();
    const count = numbersOf[upper];
    const numbers = (rest.match(/-?(?:\d+\.?\d*|\.\d+)/g) ?? []).map(Number);
    if (
      count === undefined ||
      (count === 0 ? numbers.length > 0 : numbers.length % count !== 0 || numbers.length === 0)
    ) {
      throw new RangeError(
        `Cannot read a path as ${letter} must be a command with its numbers: current path is ${d}`,
      );
    }
    const isRelative = letter !== upper;
    if (upper === "Z") {
      segments.push(["Z"]);
      at = start;
      control = undefined;
    }
    for (let i = 0; i < numbers.length; i += count) {
      const [a = 0, b = 0, c = 0, e = 0, f = 0, g = 0] = numbers.slice(i, i + count);
      const from = isRelative ? at : ([0, 0] as const);
      const point = (x: number, y: number): Point => [from[0] + x, from[1] + y];
      let end: Point;
      if (upper === "M" || upper === "L") {
        end = point(a, b);
        // Further pairs after a move are lines.
        const moves = upper === "M" && i === 0;
        if (moves) start = end;
        segments.push([moves ? "M" : "L", ...place(end)]);
        control = undefined;
      } else if (upper === "H" || upper === "V") {
        end = upper === "H" ? [from[0] + a, at[1]] : [at[0], from[1] + a];
        segments.push(["L", ...place(end)]);
        control = undefined;
      } else if (upper === "C") {
        end = point(f, g);
        segments.push(["C", ...place(point(a, b)), ...place(point(c, e)), ...place(end)]);
        control = undefined;
      } else {
        const bend: Point = upper === "Q" ? point(a, b) : reflect(control ?? at, at);
        end = upper === "Q" ? point(c, e) : point(a, b);
        // A quadratic as the cubic that is the same curve.
        const c1: Point = [at[0] + (2 / 3) * (bend[0] - at[0]), at[1] + (2 / 3) * (bend[1] - at[1])];
        const c2: Point = [end[0] + (2 / 3) * (bend[0] - end[0]), end[1] + (2 / 3) * (bend[1] - end[1])];
        segments.push(["C", ...place(c1), ...place(c2), ...place(end)]);
        control = bend;
      }
      at = end;
    }
  }
  return segments;
}

function reflect([x, y]: Point, [cx, cy]: Point): Point {
  return [2 * cx - x, 2 * cy - y];
}
