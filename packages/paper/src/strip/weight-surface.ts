import { type BodyModel, estimateWeight, idealWeight, type SiteProfile } from "@steelyard/core/body";
import { centimetres, millimetres } from "@steelyard/core/units";
import type { ArmAxis } from "./arm-axis.ts";

/** The lengths of the chart, cm. */
export const shortestCm = 45;
export const tallestCm = 200;

/** Beyond both edges of the chart, so that lines leave it without a kink. */
const beyond = 0.06;
const columns = 56;
/** Rows of the table, cm apart. */
const rowCm = 1;

/** ln of the total weight over the chart: a row for each length, a column for each place across it. */
export interface WeightSurface {
  readonly lengthsCm: readonly number[];
  readonly across: readonly number[];
  /** rows[i][j]: ln kg at lengthsCm[i], across[j]; strictly rising along j. */
  readonly rows: readonly (readonly number[])[];
  /** Where across the chart a weight lies at a row, or undefined where it lies beyond both edges. */
  acrossOf(row: number, logKg: number): number | undefined;
  readonly margin: readonly MarginEntry[];
}

/** What the margin says of one length. */
export interface MarginEntry {
  readonly lengthCm: number;
  readonly idealKg: number;
  /** The 95 % range of a weight read at the ideal line, as factors on it. */
  readonly low95: number;
  readonly high95: number;
}

/** The weights that the model gives for every length and arm of the chart, sex unknown. Throws a `RangeError` where they do not rise with the arm. */
export function createWeightSurface(given: {
  readonly model: BodyModel;
  readonly site: SiteProfile;
  readonly axis: ArmAxis;
}): WeightSurface {
  const { model, site, axis } = given;
  const lengthsCm = Array.from(
    { length: (tallestCm - shortestCm) / rowCm + 1 },
    (_, i) => shortestCm + i * rowCm,
  );
  const across = Array.from({ length: columns + 1 }, (_, j) => -beyond + (j / columns) * (1 + 2 * beyond));
  const estimate = (lengthCm: number, armMm: number) => {
    const result = estimateWeight(
      { lengthCm: centimetres(lengthCm), armMm: millimetres(armMm) },
      { model, site },
    );
    if (!result.ok) {
      throw new RangeError(
        `Cannot draw the chart as the model must give a weight at ${lengthCm} cm and ${armMm} mm`,
      );
    }
    return result.value;
  };
  const rows = lengthsCm.map((lengthCm) =>
    across.map((place) => Math.log(estimate(lengthCm, axis.armMm({ lengthCm, across: place })).totalKg)),
  );
  for (const [i, row] of rows.entries()) {
    if (row.some((value, j) => j > 0 && value <= (row[j - 1] as number))) {
      throw new RangeError(
        `Cannot draw the chart as weight must rise with the arm: it does not at ${lengthsCm[i]} cm`,
      );
    }
  }
  const acrossOf = (row: number, logKg: number): number | undefined =>
    invert(across, rows[row] as readonly number[], logKg);
  const margin = lengthsCm.map((lengthCm, row): MarginEntry => {
    const ideal = idealWeight({ lengthCm: centimetres(lengthCm) });
    if (!ideal.ok)
      throw new RangeError(`Cannot draw the margin as there must be an ideal weight at ${lengthCm} cm`);
    const place = acrossOf(row, Math.log(ideal.value)) ?? 0.5;
    const { totalKg, low95Kg, high95Kg } = estimate(lengthCm, axis.armMm({ lengthCm, across: place }));
    return { lengthCm, idealKg: ideal.value, low95: low95Kg / totalKg, high95: high95Kg / totalKg };
  });
  return { lengthsCm, across, rows, acrossOf, margin };
}

/** The x at which a rising row of values passes a value: by the cubic through the four points round it, in the value. */
function invert(xs: readonly number[], ys: readonly number[], y: number): number | undefined {
  const last = ys.length - 1;
  if (y < (ys[0] as number) || y > (ys[last] as number)) return undefined;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((ys[middle] as number) <= y) low = middle;
    else high = middle;
  }
  const first = Math.min(Math.max(low - 1, 0), last - 3);
  let sum = 0;
  for (let i = first; i < first + 4; i += 1) {
    let term = xs[i] as number;
    for (let j = first; j < first + 4; j += 1) {
      if (j !== i) term *= (y - (ys[j] as number)) / ((ys[i] as number) - (ys[j] as number));
    }
    sum += term;
  }
  return sum;
}
