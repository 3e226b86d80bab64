/** A weight that somebody named, to stand on the beam beside the estimate. */
export interface BeamMark {
  readonly kind: "ideal" | "carer" | "earlier";
  readonly kg: number;
}

export interface PlacedMark extends BeamMark {
  readonly x: number;
  /** Row of its label, 0 at the top. */
  readonly row: number;
  /** The label stands to the right of the line, or to the left. */
  readonly right: boolean;
  /** The weight lies off the drawing on this side; absent where the mark is in its place. */
  readonly beyond?: "low" | "high";
}

const rows = 3;
const gap = 6;

/**
 * Where the marks and their labels go: each label on the side away from the total weight while there is room, in the highest
 * row where it touches no other. `widthOf` gives the width of a label in the units of the drawing.
 */
export function placeMarks({
  marks,
  x,
  total,
  low,
  high,
  widthOf,
}: {
  readonly marks: readonly BeamMark[];
  readonly x: (kg: number) => number;
  readonly total: number;
  /** Ends of the beam in the drawing. */
  readonly low: number;
  readonly high: number;
  readonly widthOf: (kind: BeamMark["kind"]) => number;
}): readonly PlacedMark[] {
  const taken: { readonly row: number; readonly from: number; readonly to: number }[] = [];
  return marks.map((mark) => {
    const wanted = x(mark.kg);
    const at = Math.min(high, Math.max(low, wanted));
    const width = widthOf(mark.kind);
    const fitsRight = at + 9 + width <= high + 8;
    const fitsLeft = at - 9 - width >= low - 8;
    const right = at >= total ? fitsRight || !fitsLeft : fitsRight && !fitsLeft;
    const from = right ? at : at - 9 - width;
    const to = right ? at + 9 + width : at;
    const isFree = (row: number): boolean =>
      taken.every((other) => other.row !== row || to + gap < other.from || from - gap > other.to);
    const row = Array.from({ length: rows }, (_, i) => i).find(isFree) ?? rows - 1;
    taken.push({ row, from, to });
    return {
      ...mark,
      x: at,
      row,
      right,
      ...(wanted < low - 0.5 && { beyond: "low" as const }),
      ...(wanted > high + 0.5 && { beyond: "high" as const }),
    };
  });
}
