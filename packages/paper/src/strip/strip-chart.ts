import { type BodyModel, defaultBodyModel, type SiteProfile, uncalibratedSite } from "@steelyard/core/body";
import type { Typefaces } from "../drawing/typefaces.ts";
import type { PaperMessages } from "../messages/paper-messages.ts";
import { type ArmAxis, createArmAxis } from "./arm-axis.ts";
import { labelContours, putArmScales } from "./label-chart.ts";
import { createLabelBoard, type Label, labelCurve } from "./place-labels.ts";
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
  readonly messages: PaperMessages;
  readonly widthMm: number;
  readonly site?: SiteProfile | undefined;
  readonly model?: BodyModel | undefined;
  /** Where pages join, cm: no label stands across them. */
  readonly joinsCm: readonly number[];
}

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
    words: messages.strip.idealLine,
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
