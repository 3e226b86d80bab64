import { err, ok, type Result } from "@steelyard/core/result";
import { type PageSize, unprintableMm } from "../frame/page-size.ts";
import { shortestCm, tallestCm } from "./weight-surface.ts";

/** Widths of the columns of the strip from left to right, mm; the chart takes the rest. */
export const sideMm = 15;
export const rulerMm = 13;
const marginMm = 30;
/** Under this the lines of the chart are too close to read to 2 %. */
const narrowestChartMm = 125;
/** Over this a wider chart reads no better. */
const widestChartMm = 320;

/** Heights on each page, mm: the band over the strip that is cut off, and what lies under its end. */
const headBandMm = 12;
export const overlapMm = 10;
const footBandMm = 13;

/** One page of the strip. */
export interface StripPage {
  readonly fromCm: number;
  readonly toCm: number;
  /** How far the drawing goes on past the join, cm. */
  readonly drawnToCm: number;
}

export interface StripLayout {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly pages: readonly StripPage[];
  /** Where pages meet, cm. */
  readonly joinsCm: readonly number[];
  /** Left edges, mm. */
  readonly sideLeftMm: number;
  readonly rulerLeftMm: number;
  readonly chartLeftMm: number;
  readonly chartWidthMm: number;
  readonly marginLeftMm: number;
  readonly rightMm: number;
  /** y of the start of each page's stretch, mm: of the head line on the first. */
  readonly topMm: number;
}

export interface TooNarrow {
  readonly type: "too-narrow";
  readonly widthMm: number;
  readonly leastMm: number;
}

/** The narrowest sheet or roll that the strip fits on, mm. */
export const narrowestMm: number = 2 * unprintableMm + sideMm + rulerMm + narrowestChartMm + marginMm;

/**
 * How the strip of 0 to 200 cm is cut into pages of a sheet, all but the last of one length in half centimetres.
 *
 * Fails with `too-narrow` where the chart would be narrower than its lines can be told apart.
 */
export function layOutSheets({ widthMm, heightMm }: PageSize): Result<StripLayout, TooNarrow> {
  const roomMm = heightMm - 2 * unprintableMm - headBandMm - overlapMm - footBandMm;
  const count = Math.ceil((tallestCm * 10) / roomMm);
  const runCm = Math.ceil((tallestCm * 2) / count) / 2;
  const pages = Array.from({ length: count }, (_, i): StripPage => {
    const toCm = Math.min((i + 1) * runCm, tallestCm);
    const drawnToCm = Math.min(toCm + overlapMm / 10, tallestCm);
    return { fromCm: i * runCm, toCm, drawnToCm };
  });
  const joinsCm = pages.slice(1).map(({ fromCm }) => fromCm);
  return columnsOf({ widthMm, heightMm, pages, joinsCm });
}

/** The strip in one piece on a roll of a given width. Fails with `too-narrow`. */
export function layOutRoll({
  rollWidthMm,
}: {
  readonly rollWidthMm: number;
}): Result<StripLayout, TooNarrow> {
  const heightMm = 2 * unprintableMm + rollHeadMm + tallestCm * 10 + footBandMm + 4;
  const pages = [{ fromCm: 0, toCm: tallestCm, drawnToCm: tallestCm }];
  return columnsOf({ widthMm: rollWidthMm, heightMm, pages, joinsCm: [] });
}

/** A roll has room for a longer head end. */
const rollHeadMm = 30;

function columnsOf(
  given: Pick<StripLayout, "widthMm" | "heightMm" | "pages" | "joinsCm">,
): Result<StripLayout, TooNarrow> {
  const { widthMm, joinsCm } = given;
  const chartMm = widthMm - 2 * unprintableMm - sideMm - rulerMm - marginMm;
  if (chartMm < narrowestChartMm) return err({ type: "too-narrow", widthMm, leastMm: narrowestMm });
  const chartWidthMm = Math.min(chartMm, widestChartMm);
  const sideLeftMm = unprintableMm;
  const rulerLeftMm = sideLeftMm + sideMm;
  const chartLeftMm = rulerLeftMm + rulerMm;
  const marginLeftMm = chartLeftMm + chartWidthMm;
  const topMm = unprintableMm + (joinsCm.length === 0 ? rollHeadMm : headBandMm);
  return ok({
    ...given,
    sideLeftMm,
    rulerLeftMm,
    chartLeftMm,
    chartWidthMm,
    marginLeftMm,
    rightMm: marginLeftMm + marginMm,
    topMm,
  });
}

/** Whether any of the chart lies on the page. */
export function showsChart({ drawnToCm }: StripPage): boolean {
  return drawnToCm > shortestCm;
}
