import { areaY, axisY, gridY, line, text } from "@observablehq/plot";
import { type BodyModel, estimateWeight, referenceSite } from "@steelyard/core/body";
import { centimetres, millimetres } from "@steelyard/core/units";
import type { AccuracyResults } from "../compute-accuracy.ts";
import { drawSvg } from "../draw-svg.ts";
import { below, beside } from "./axis-label.ts";

const lengthsCm = [60, 85, 110, 140, 170] as const;
const stepMm = 2;
/** Few children have a wider arm. */
const widestMm = 450;
const weightTicksKg = [3, 4, 5, 6, 8, 10, 15, 20, 30, 40, 60, 80, 100, 150];

/** Weight against arm at five lengths, with the 95 % interval: the shape of the model. */
export function drawWeightByArm({ model }: AccuracyResults): string {
  const curves = lengthsCm.map((lengthCm) => curveAt(model, lengthCm));
  return drawSvg({
    title: "Estimated weight against arm circumference at five lengths",
    width: 760,
    height: 560,
    marginRight: 64,
    marginLeft: 56,
    marginBottom: 44,
    x: { domain: [80, 460], ...below, label: "mid-upper-arm circumference, mm", grid: true },
    y: { type: "log", domain: [3, 180], axis: null },
    marks: [
      gridY(weightTicksKg),
      axisY(weightTicksKg, { text: String, ...beside, label: "weight, kg (logarithmic)" }),
      ...curves.flatMap((points) => [
        areaY(points, { x: "armMm", y1: "lowKg", y2: "highKg", fill: "#cfcfcf", fillOpacity: 0.8 }),
        line(points, { x: "armMm", y: "kg", strokeWidth: 1.8 }),
        text(points.slice(-1), {
          x: "armMm",
          y: "kg",
          text: (point) => `${point.lengthCm} cm`,
          textAnchor: "start",
          dx: 6,
        }),
      ]),
    ],
  });
}

interface Point {
  readonly lengthCm: number;
  readonly armMm: number;
  readonly kg: number;
  readonly lowKg: number;
  readonly highKg: number;
}

/** From the thinnest to the thickest arm that 998 of 1,000 children of this length have. */
function curveAt(model: BodyModel, lengthCm: number): readonly Point[] {
  const ranges = (["m", "f"] as const).map((sex) => model.byLength.at(sex, lengthCm).fitted("arm"));
  const low = Math.ceil(Math.min(...ranges.map((range) => range.low)) / stepMm);
  const high = Math.floor(Math.min(Math.max(...ranges.map((range) => range.high)), widestMm) / stepMm);
  return Array.from({ length: high - low + 1 }, (_, i) => (low + i) * stepMm).flatMap((armMm) => {
    const measurements = { lengthCm: centimetres(lengthCm), armMm: millimetres(armMm) };
    const estimate = estimateWeight(measurements, { model, site: referenceSite });
    if (!estimate.ok) return [];
    const { totalKg: kg, low95Kg: lowKg, high95Kg: highKg } = estimate.value;
    return [{ lengthCm, armMm, kg, lowKg, highKg }];
  });
}
