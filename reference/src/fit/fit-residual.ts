import {
  type BodyModel,
  boxCoxZ,
  type Residual,
  straightFrom,
  studentQuantile,
  studentSeries,
} from "@steelyard/core/body";
import type { FitChild } from "./select-children.ts";

const candidates = {
  spreadPower: steps({ from: 0, to: 1, step: 0.05 }),
  tailDf: [4, 6, 8, 10, 12, 14, 16, 20, 24, 30],
  scale: steps({ from: 0.8, to: 1.1, step: 0.01 }),
} as const satisfies Record<keyof Residual, readonly number[]>;

interface ResidualRow {
  /** (z of weight - its mean given the arm) in conditional standard deviations. */
  readonly residual: number;
  readonly logSlope: number;
}

/**
 * Finds the shape of the weight's z given the arm's: how the spread follows the slope of the weight curve, how heavy the tails
 * are (maximum likelihood over a grid, one coordinate at a time until none changes), and the scale.
 */
export function fitResidual({
  model,
  children,
}: {
  model: BodyModel;
  children: readonly FitChild[];
}): Residual {
  const rows = children.map((child): ResidualRow => {
    const at = model.at(child.sex, child.lengthCm);
    const weight = at.curve("weight");
    const rho = at.correlation("weight", "arm");
    const mean = rho * boxCoxZ(at.curve("arm"), Math.log(child.armMm));
    const slope = Math.max(1 + weight.lambda * weight.sigma * mean, straightFrom);
    const sd = Math.sqrt(1 - rho * rho);
    return { residual: (boxCoxZ(weight, Math.log(child.weightKg)) - mean) / sd, logSlope: Math.log(slope) };
  });
  const logLikelihood = ({ spreadPower, tailDf, scale }: Residual): number => {
    let sum = rows.length * Math.log(studentSeries(tailDf).density(0));
    for (const { residual, logSlope } of rows) {
      const logScale = Math.log(scale) + spreadPower * logSlope;
      const t = residual * Math.exp(-logScale);
      sum -= logScale + ((tailDf + 1) / 2) * Math.log1p((t * t) / tailDf);
    }
    return sum;
  };
  let best: Residual = { spreadPower: 0.5, tailDf: 10, scale: 0.95 };
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
  return { ...best, scale: scaleForCoverage({ rows, shape: best }) };
}

/** The scale at which the 95 % interval holds 95 % of the children fitted: likelihood weighs the far tails as well. */
function scaleForCoverage({ rows, shape }: { rows: readonly ResidualRow[]; shape: Residual }): number {
  const sizes = rows
    .map(({ residual, logSlope }) => Math.abs(residual) * Math.exp(-shape.spreadPower * logSlope))
    .sort((a, b) => a - b);
  const covered = sizes[Math.ceil(0.95 * sizes.length) - 1] as number;
  return Number((covered / studentQuantile({ probability: 0.975, df: shape.tailDf })).toFixed(3));
}

function steps({ from, to, step }: { from: number; to: number; step: number }): readonly number[] {
  return Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) =>
    Number((from + i * step).toFixed(4)),
  );
}
