import { dot, type Markish, text } from "@observablehq/plot";

/** A way to draw one series that holds in black and white: a shape, filled or hollow. */
export interface Shape {
  readonly symbol: "circle" | "square" | "triangle" | "diamond";
  readonly fill: "black" | "white" | "grey";
}

const rowHeight = 16;

/** The key of a figure: shapes with their names, one below the other in a corner. */
export function symbolKey(given: {
  entries: readonly (Shape & { readonly name: string })[];
  anchor: "bottom-left" | "top-left";
  /** Channels of the facet it stands in. */
  facet?: Readonly<Record<string, readonly string[]>>;
  /** How far above the frame the first row stands, px; inside the frame when absent. */
  abovePx?: number;
}): readonly Markish[] {
  const { entries, anchor, facet = {}, abovePx } = given;
  const up = anchor === "bottom-left";
  return entries.flatMap(({ name, symbol, fill }, i) => {
    const dy = up
      ? -12 - rowHeight * (entries.length - 1 - i)
      : rowHeight * i + (abovePx === undefined ? 12 : -abovePx);
    return [
      dot([0], { ...facet, frameAnchor: anchor, dx: 12, dy, symbol, fill, stroke: "black", r: 4 }),
      text([name], {
        ...facet,
        frameAnchor: anchor,
        dx: 24,
        dy,
        textAnchor: "start",
        lineAnchor: "middle",
        fontSize: 12,
      }),
    ];
  });
}
