import {
  bendOf,
  boxCoxZ,
  type IndexedModel,
  type Residual,
  type SplineBasis,
  splineValue,
  straightFrom,
  studentQuantile,
  studentSeries,
} from "@steelyard/core/body";
import { fitBend } from "./fit-bend.ts";
import type { FitChild } from "./fit-child.ts";
import { quantityOf } from "./quantity-of.ts";

const candidates = {
  spreadPower: steps({ from: 0, to: 1, step: 0.05 }),
  tailDf: [4, 6, 8, 10, 12, 14, 16, 20, 24, 30],
  scale: steps({ from: 0.8, to: 1.1, step: 0.01 }),
} as const satisfies Record<keyof Residual, readonly number[]>;

/** Where the bend is fitted from; the shape is estimated after it. */
const firstShape: Residual = { spreadPower: 0.5, tailDf: 10, scale: 0.9 };

interface ResidualRow {
  readonly logIndex: number;
  readonly expectedZ: number;
  /** (z of weight - its mean given the arm) in conditional standard deviations. */
  readonly residual: number;
  /** The conditional standard deviation itself. */
  readonly sd: number;
  readonly logSlope: number;
  readonly weight: number;
}

export interface FittedResidual {
  readonly residual: Residual;
  readonly bend: readonly (readonly number[])[];
}

/**
 * Finds the shape of the weight's z given the arm's: what the straight line misses (`fitBend`), how the spread follows the slope of the weight
 * curve, how heavy the tails are (maximum likelihood over a grid, one coordinate at a time until none changes), and the scale.
 */
export function fitResidual(given: {
  model: IndexedModel;
  children: readonly FitChild[];
  basis: SplineBasis;
}): FittedResidual {
  const { model, children, basis } = given;
  const rows = children.flatMap((child): ResidualRow[] => {
    if (child.armMm === undefined) return [];
    const index = quantityOf(child, model.index.quantity) as number;
    const at = model.at(child.sex, index);
    const weight = at.curve("weight");
    const rho = at.correlation("weight", "arm");
    const expectedZ = rho * boxCoxZ(at.curve("arm"), Math.log(child.armMm));
    const slope = Math.max(1 + weight.lambda * weight.sigma * expectedZ, straightFrom);
    return [
      {
        logIndex: Math.log(index),
        expectedZ,
        residual: (boxCoxZ(weight, Math.log(child.weightKg)) - expectedZ) / Math.sqrt(1 - rho * rho),
        sd: Math.sqrt(1 - rho * rho),
        logSlope: Math.log(slope),
        weight: child.weight ?? 1,
      },
    ];
  });
  const spreadOf = (shape: Residual, { logSlope }: ResidualRow): number =>
    shape.scale * Math.exp(shape.spreadPower * logSlope);
  const bend = fitBend({
    basis,
    x: Float64Array.from(rows, ({ logIndex }) => logIndex),
    expectedZ: Float64Array.from(rows, ({ expectedZ }) => expectedZ),
    residual: Float64Array.from(rows, (row) => row.residual / spreadOf(firstShape, row)),
    // The bend moves z by variance x (1 - variance) x bend, so it moves the standardised residual by this much per unit.
    gain: Float64Array.from(rows, (row) => gainOf(row) / spreadOf(firstShape, row)),
    weights: Float64Array.from(rows, ({ weight }) => weight),
  });
  const bends = rows.map(({ logIndex, expectedZ }) =>
    bendOf(
      bend.map((coefficients) => splineValue(basis, coefficients, logIndex)),
      expectedZ,
    ),
  );
  const bent = rows.map((row, i) => row.residual - gainOf(row) * (bends[i] as number));
  const logLikelihood = (shape: Residual): number => {
    const { tailDf } = shape;
    const logPeak = Math.log(studentSeries(tailDf).density(0));
    let sum = 0;
    rows.forEach((row, i) => {
      const spread = spreadOf(shape, row);
      const t = (bent[i] as number) / spread;
      sum -= row.weight * (Math.log(spread) + ((tailDf + 1) / 2) * Math.log1p((t * t) / tailDf));
      sum += row.weight * logPeak;
    });
    return sum;
  };
  const shape = climb(logLikelihood);
  const distances = rows.map((row, i) =>
    Math.abs((bent[i] as number) / spreadOf({ ...shape, scale: 1 }, row)),
  );
  return { bend, residual: { ...shape, scale: scaleForCoverage({ tailDf: shape.tailDf, distances }) } };
}

function gainOf({ sd }: ResidualRow): number {
  return sd * (1 - sd * sd);
}

function climb(logLikelihood: (shape: Residual) => number): Residual {
  let best = firstShape;
  let bestLogLikelihood = logLikelihood(best);
  for (let changed = true; changed; ) {
    changed = false;
    for (const key of ["spreadPower", "tailDf", "scale"] as const) {
      for (const value of candidates[key]) {
        const candidate = { ...best, [key]: value };
        const own = logLikelihood(candidate);
        if (own > bestLogLikelihood) {
          best = candidate;
          bestLogLikelihood = own;
          changed = true;
        }
      }
    }
  }
  return best;
}

/** The scale at which the 95 % interval holds 95 % of the children fitted: likelihood weighs the far tails as well. */
function scaleForCoverage(given: { tailDf: number; distances: readonly number[] }): number {
  const { tailDf, distances } = given;
  const limit = studentQuantile({ probability: 0.975, df: tailDf });
  let [low, high] = [0.5, 2];
  for (let i = 0; i < 40; i++) {
    const scale = (low + high) / 2;
    const covered = distances.filter((distance) => distance <= limit * scale).length / distances.length;
    if (covered < 0.95) low = scale;
    else high = scale;
  }
  return Number(((low + high) / 2).toFixed(3));
}

function steps({ from, to, step }: { from: number; to: number; step: number }): readonly number[] {
  return Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) =>
    Number((from + i * step).toFixed(4)),
  );
}
