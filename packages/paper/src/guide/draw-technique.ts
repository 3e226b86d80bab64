import type { Group, Item, Point } from "../drawing/item.ts";
import { ink, paperWhite } from "../drawing/palette.ts";
import { parsePath } from "../drawing/parse-path.ts";
import { group } from "../drawing/shapes.ts";
import type { LineDrawing } from "../drawings/line-drawing.ts";

/** Width of the lines of the drawing, in its own millimetres. */
const lineMm = 1.5;

/** A line drawing at a place and a width: limbs as outlines, thin lines, the tape strong, the marks from where to where. */
export function drawTechnique(given: {
  readonly drawing: LineDrawing;
  readonly at: Point;
  readonly widthMm: number;
  readonly alt: string;
}): Group {
  const { drawing, at, widthMm, alt } = given;
  const k = widthMm / drawing.widthMm;
  const place = ([x, y]: Point): Point => [at[0] + x * k, at[1] + y * k];
  const stroke = (d: string, width: number, colour: typeof ink): Item => ({
    kind: "path",
    segments: parsePath(d, place),
    stroke: { colour, widthMm: width * k, cap: "round" },
  });
  const bodies = drawing.bodies.flatMap((tubes): Item[] => [
    ...tubes.map((tube) => stroke(tube.d, tube.widthMm, ink)),
    ...tubes.map((tube) => stroke(tube.d, tube.widthMm - 2 * lineMm, paperWhite)),
  ]);
  return group(
    [
      ...bodies,
      stroke(drawing.lines, lineMm * 0.8, ink),
      stroke(drawing.marks, lineMm * 0.6, ink),
      stroke(drawing.tape, lineMm * 1.8, ink),
    ],
    {
      role: "Figure",
      alt,
      // Limbs run on past the edge of the picture.
      clip: { xMm: at[0], yMm: at[1], widthMm, heightMm: drawing.heightMm * k },
    },
  );
}
