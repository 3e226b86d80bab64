import { formatNumber } from "@steelyard/core/units";
import { setText } from "../drawing/set-text.ts";
import type { Typefaces } from "../drawing/typefaces.ts";
import type { PaperMessages } from "../messages/paper-messages.ts";
import type { ArmAxis } from "./arm-axis.ts";
import { curveAt, curveEndCm } from "./curve-path.ts";
import { type LabelBoard, labelCurve } from "./place-labels.ts";
import type { Contour, Curve } from "./trace-contours.ts";
import { shortestCm } from "./weight-surface.ts";

/** Arm scales across the chart, cm along it. */
export const armScalesCm: readonly number[] = [
  shortestCm,
  ...Array.from({ length: 15 }, (_, i) => 50 + i * 10),
];

/** Labels of weights keep off the line of ideal weight. */
const clearOfIdealMm = 2.2;

/** The arms in mm along each scale: whole fifties first, then twenties and tens where there is room. */
export function putArmScales(given: {
  typefaces: Typefaces;
  messages: PaperMessages;
  board: LabelBoard;
  axis: ArmAxis;
  widthMm: number;
}): void {
  const { typefaces, board, axis, widthMm, messages } = given;
  for (const scaleCm of armScalesCm) {
    // Read a little below the line, where the figures stand.
    const lengthCm = scaleCm + armFiguresMm / 10;
    const name = setText(typefaces, messages.strip.armScale, [1, lengthCm * 10], { sizePt: 6 });
    board.put(name);
    const free = name.widthMm + 3;
    for (const step of [50, 20, 10]) {
      for (let armMm = step; armMm <= 520; armMm += step) {
        const xMm = axis.across({ lengthCm: lengthCm - 0.1, armMm }) * widthMm;
        if (xMm < free || xMm > widthMm - 3.5) continue;
        board.put(
          setText(typefaces, formatNumber(armMm), [xMm, lengthCm * 10], { sizePt: 6.5, anchor: "middle" }),
        );
      }
    }
  }
}

/** Baseline of the figures of an arm scale, mm under its line. */
const armFiguresMm = 3;

export function labelContours(given: {
  typefaces: Typefaces;
  messages: PaperMessages;
  board: LabelBoard;
  contours: readonly Contour[];
  ideal: Curve;
  widthMm: number;
  clear: (lengthCm: number) => boolean;
}): void {
  const { typefaces, board, contours, ideal, widthMm, clear, messages } = given;
  // Strong lines choose their places first.
  for (const strong of [true, false]) {
    for (const [i, contour] of contours.entries()) {
      if (contour.strong !== strong) continue;
      const neighbours = [contours[i - 1], contours[i + 1]].filter((own) => own !== undefined);
      const roomMm = strong ? 0 : 1.9;
      const written = formatNumber(contour.kg, messages.language.numbers);
      labelCurve({
        typefaces,
        board,
        curve: contour,
        widthMm,
        words: strong ? messages.strip.kilograms(written) : written,
        look: strong ? { font: "bold", sizePt: 7.5 } : { sizePt: 6 },
        everyCm: strong ? 6 : 9,
        startCm: strong ? 2.5 : 2 + ((i * 3.7) % 7),
        allowed: (at) =>
          at.across > 0.02 &&
          at.across < 0.98 &&
          clear(at.lengthCm) &&
          Math.abs(curveAt(ideal, at.lengthCm).across - at.across) * widthMm > clearOfIdealMm &&
          neighbours.every((other) => distanceMm(at, other, contour, widthMm) > roomMm),
      });
    }
  }
}

/** From a point on a contour to its neighbour, square to the line, mm. */
function distanceMm(
  at: { readonly lengthCm: number; readonly across: number },
  other: Curve,
  own: Curve,
  widthMm: number,
): number {
  if (at.lengthCm < other.fromCm || at.lengthCm > curveEndCm(other)) return Number.POSITIVE_INFINITY;
  const acrossMm = Math.abs(curveAt(other, at.lengthCm).across - at.across) * widthMm;
  const slopeMm = (curveAt(own, at.lengthCm).slope * widthMm) / 10;
  return acrossMm / Math.hypot(1, slopeMm);
}
