import { formatNumber } from "@steelyard/core/units";
import type { Item, Path, Segment, Stroke } from "../drawing/item.ts";
import { ink } from "../drawing/palette.ts";
import { setText } from "../drawing/set-text.ts";
import { line, strokes } from "../drawing/shapes.ts";
import type { Typefaces } from "../drawing/typefaces.ts";
import { rulerMm, type StripLayout, type StripPage } from "./strip-layout.ts";
import { tallestCm } from "./weight-surface.ts";

const tick: Stroke = { colour: ink, widthMm: 0.12 };

/** The tape: a tick every millimetre from the head line, figures every centimetre, exactly 1:1. */
export function drawLengthRuler(given: {
  readonly layout: StripLayout;
  readonly page: StripPage;
  readonly typefaces: Typefaces;
}): readonly Item[] {
  const { layout, page, typefaces } = given;
  const right = layout.rulerLeftMm + rulerMm;
  /** Where the whole tape ends, on the last page: its figure stands over the line. */
  const end = page.toCm === tallestCm ? tallestCm * 10 : undefined;
  const segments: Segment[] = [];
  const items: Item[] = [];
  for (let mm = Math.round(page.fromCm * 10); mm <= Math.round(page.drawnToCm * 10); mm += 1) {
    const y = layout.topMm + mm - page.fromCm * 10;
    segments.push(["M", right - tickMm(mm), y], ["L", right, y]);
    // The figure at a join stands on the page after it, just under the line that is cut along.
    const isFirst = mm === Math.round(page.fromCm * 10) && mm > 0;
    const isFigure = mm % 10 === 0 && mm > page.fromCm * 10 - 0.1 && (mm < page.toCm * 10 - 2 || mm === end);
    if (!isFigure || mm === 0) continue;
    const cm = mm / 10;
    const strong = cm % 5 === 0;
    const [sizePt, middle] = cm % 10 === 0 ? [11, 1.3] : [8, 0.95];
    const drop = isFirst ? 2 * middle + 0.7 : mm === end ? -0.8 : middle;
    items.push(
      setText(typefaces, formatNumber(cm), [right - 5.6, y + drop], {
        anchor: "end",
        sizePt,
        font: strong ? "bold" : "regular",
      }),
    );
  }
  const ticks: Path = { kind: "path", segments, stroke: tick };
  const bottom = layout.topMm + (page.drawnToCm - page.fromCm) * 10;
  return [ticks, line([right, layout.topMm], [right, bottom], strokes.strong), ...items];
}

function tickMm(mm: number): number {
  return mm % 10 === 0 ? 5 : mm % 5 === 0 ? 3.4 : 2;
}
