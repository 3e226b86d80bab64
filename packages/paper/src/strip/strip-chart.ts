import { type BodyModel, defaultBodyModel, type SiteProfile, uncalibratedSite } from "@steelyard/core/body";
import { formatNumber } from "@steelyard/core/units";
import { setText } from "../drawing/set-text.ts";
import { contains, type TurnedBox } from "../drawing/turned-box.ts";
import type { Typefaces } from "../drawing/typefaces.ts";
import type { StripMessages } from "../messages/strip-messages.ts";
import { type ArmAxis, createArmAxis } from "./arm-axis.ts";
import { curveAt, curveEndCm, type Stretch } from "./curve-path.ts";
import { createLabelBoard, type Label, type LabelBoard, labelCurve } from "./place-labels.ts";
import { type Contour, type Curve, traceContours } from "./trace-contours.ts";
import { createWeightSurface, type MarginEntry, shortestCm, tallestCm } from "./weight-surface.ts";

interface ArmLine extends Curve {
  readonly armMm: number;
}

/** The chart of the whole strip, before it is cut into pages: curves by length and place across, labels in mm. */
export interface StripChart {
  readonly widthMm: number;
  readonly axis: ArmAxis;
  readonly contours: readonly Contour[];
  readonly ideal: Curve;
  readonly armLines: readonly ArmLine[];
  /** The edges of the arms that the fit has seen. */
  readonly fittedLow: Curve;
  readonly fittedHigh: Curve;
  readonly margin: readonly MarginEntry[];
  readonly labels: readonly Label[];
}

export interface StripChartInput {
  readonly typefaces: Typefaces;
  readonly messages: StripMessages;
  readonly widthMm: number;
  readonly site?: SiteProfile | undefined;
  readonly model?: BodyModel | undefined;
  /** Where pages join, cm: no label stands across them. */
  readonly joinsCm: readonly number[];
}

/** Arm scales across the chart, cm along it. */
export const armScalesCm: readonly number[] = [
  shortestCm,
  ...Array.from({ length: 15 }, (_, i) => 50 + i * 10),
];

/** Labels of weights keep off the line of ideal weight. */
const clearOfIdealMm = 2.2;

/** Labels keep this far from a join, cm. */
const clearOfJoinCm = 0.6;

export function createStripChart(input: StripChartInput): StripChart {
  const {
    typefaces,
    messages,
    widthMm,
    site = uncalibratedSite,
    model = defaultBodyModel(),
    joinsCm,
  } = input;
  const axis = createArmAxis(model);
  const surface = createWeightSurface({ model, site, axis });
  const contours = traceContours(surface);
  const overRows = (at: (lengthCm: number, row: number) => number): Curve => ({
    fromCm: shortestCm,
    stepCm: 1,
    across: surface.lengthsCm.map(at),
  });
  const ideal = overRows(
    (_, row) => surface.acrossOf(row, Math.log((surface.margin[row] as MarginEntry).idealKg)) ?? 0,
  );
  const armLines = traceArmLines(axis);
  const board = createLabelBoard(typefaces);
  const clear = (lengthCm: number): boolean =>
    lengthCm > shortestCm + 0.7 &&
    lengthCm < tallestCm - 0.7 &&
    joinsCm.every((join) => Math.abs(join - lengthCm) > clearOfJoinCm + 0.35);
  putArmScales({ typefaces, messages, board, axis, widthMm });
  labelCurve({
    typefaces,
    board,
    curve: ideal,
    widthMm,
    words: messages.idealLine,
    look: { font: "bold", sizePt: 7 },
    everyCm: 25,
    startCm: 12,
    allowed: ({ lengthCm }) => joinsCm.every((join) => Math.abs(join - lengthCm) > 2) && clear(lengthCm),
  });
  labelContours({ typefaces, board, contours, ideal, widthMm, clear, messages });
  return {
    widthMm,
    axis,
    contours,
    ideal,
    armLines,
    fittedLow: overRows((lengthCm) => axis.across({ lengthCm, armMm: axis.fitted(lengthCm).lowMm })),
    fittedHigh: overRows((lengthCm) => axis.across({ lengthCm, armMm: axis.fitted(lengthCm).highMm })),
    margin: surface.margin,
    labels: board.labels,
  };
}

function traceArmLines(axis: ArmAxis): readonly ArmLine[] {
  const lines: ArmLine[] = [];
  const lengths = Array.from({ length: tallestCm - shortestCm + 1 }, (_, i) => shortestCm + i);
  for (let armMm = 50; armMm <= 530; armMm += armMm < 200 ? 5 : 10) {
    const places = lengths.map((lengthCm) => axis.across({ lengthCm, armMm }));
    const inside = (place: number): boolean => place > -0.05 && place < 1.05;
    const first = places.findIndex(inside);
    const last = places.findLastIndex(inside);
    if (last - first < 1) continue;
    lines.push({
      armMm,
      fromCm: lengths[first] as number,
      stepCm: 1,
      across: places.slice(first, last + 1),
    });
  }
  return lines;
}

/** The arms in mm along each scale: whole fifties first, then twenties and tens where there is room. */
function putArmScales(given: {
  typefaces: Typefaces;
  messages: StripMessages;
  board: LabelBoard;
  axis: ArmAxis;
  widthMm: number;
}): void {
  const { typefaces, board, axis, widthMm, messages } = given;
  for (const scaleCm of armScalesCm) {
    // Read a little below the line, where the figures stand.
    const lengthCm = scaleCm + armFiguresMm / 10;
    const name = setText(typefaces, messages.armScale, [1, lengthCm * 10], { sizePt: 6 });
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

function labelContours(given: {
  typefaces: Typefaces;
  messages: StripMessages;
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
      labelCurve({
        typefaces,
        board,
        curve: contour,
        widthMm,
        words: strong ? messages.kilograms(formatNumber(contour.kg)) : formatNumber(contour.kg),
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

/** The stretches of a curve that no label stands on. */
export function stretchesBetween(given: {
  readonly curve: Curve;
  readonly labels: readonly Label[];
  readonly widthMm: number;
  readonly within: Stretch;
}): readonly Stretch[] {
  const { curve, labels, widthMm, within } = given;
  const fromCm = Math.max(within.fromCm, curve.fromCm);
  const toCm = Math.min(within.toCm, curveEndCm(curve));
  const gaps = labels
    .flatMap(({ box }) => gapOf({ curve, box, widthMm, fromCm, toCm }))
    .sort((a, b) => a.fromCm - b.fromCm);
  const stretches: Stretch[] = [];
  let at = fromCm;
  for (const gap of gaps) {
    if (gap.fromCm > at) stretches.push({ fromCm: at, toCm: gap.fromCm });
    at = Math.max(at, gap.toCm);
  }
  if (at < toCm) stretches.push({ fromCm: at, toCm });
  return stretches;
}

const gapStepCm = 0.02;

function gapOf(given: {
  curve: Curve;
  box: TurnedBox;
  widthMm: number;
  fromCm: number;
  toCm: number;
}): readonly Stretch[] {
  const { curve, box, widthMm, fromCm, toCm } = given;
  const ys = box.map(([, y]) => y / 10);
  const low = Math.max(Math.min(...ys), fromCm);
  const high = Math.min(Math.max(...ys), toCm);
  if (low >= high) return [];
  const xs = box.map(([x]) => x / widthMm);
  const ends = [curveAt(curve, low).across, curveAt(curve, high).across];
  if (Math.max(...ends) < Math.min(...xs) - 0.01 || Math.min(...ends) > Math.max(...xs) + 0.01) return [];
  let first: number | undefined;
  let last = low;
  for (let cm = low; cm <= high + 1e-9; cm += gapStepCm) {
    if (!contains(box, [curveAt(curve, cm).across * widthMm, cm * 10])) continue;
    first ??= cm;
    last = cm;
  }
  return first === undefined ? [] : [{ fromCm: first - gapStepCm, toCm: last + gapStepCm }];
}
