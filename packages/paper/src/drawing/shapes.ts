import type { Group, Item, Line, Path, Point, Segment, Stroke } from "./item.ts";
import { ink } from "./palette.ts";

/** A point in mm, exactly: one point is 1/72 in and an inch 25.4 mm. */
export const pointMm: number = 25.4 / 72;

/** Widths of lines in use, mm. */
export const strokes: Readonly<Record<"fine" | "thin" | "plain" | "strong" | "heavy", Stroke>> = {
  fine: { colour: ink, widthMm: 0.1 },
  thin: { colour: ink, widthMm: 0.15 },
  plain: { colour: ink, widthMm: 0.25 },
  strong: { colour: ink, widthMm: 0.45 },
  heavy: { colour: ink, widthMm: 0.8 },
};

export function line(from: Point, to: Point, stroke: Stroke = strokes.plain): Line {
  return { kind: "line", from, to, stroke };
}

/** Straight lines from point to point. */
export function polyline(
  points: readonly Point[],
  look: Pick<Path, "stroke" | "fill"> & { readonly closed?: boolean },
): Path {
  const { closed, ...rest } = look;
  const segments: Segment[] = points.map(([xMm, yMm], i) => [i === 0 ? "M" : "L", xMm, yMm]);
  if (closed) segments.push(["Z"]);
  return { kind: "path", segments, ...rest };
}

export function group(items: readonly Item[], rest: Omit<Group, "kind" | "items"> = {}): Group {
  return { kind: "group", items, ...rest };
}
