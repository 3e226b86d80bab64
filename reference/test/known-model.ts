import {
  type BodyAt,
  type BodyModel,
  type CurveCoefficients,
  createBodyModel,
  estimateWeight,
  type Measurements,
  pairKey,
  type Quantity,
  type Residual,
  type Sex,
  type WeightEstimate,
} from "@steelyard/core/body";
import type { Matrix } from "ml-matrix";

/** One sex of a model that is the same at every length: curves, and correlations in the order of `names`. */
export interface ConstantSex {
  readonly curves: readonly { readonly logMedian: number; readonly sigma: number; readonly lambda: number }[];
  readonly correlations: Matrix;
}

const intervals = 5;
const constant = (value: number): readonly number[] => new Array<number>(intervals + 3).fill(value);

/** A model made through the file format of the fit, with curves and correlations that are known. */
export function constantModel(given: {
  names: readonly Quantity[];
  residual: Residual;
  boysLogit: number;
  sexes: Readonly<Record<Sex, ConstantSex>>;
}): BodyModel {
  const { names, residual, boysLogit, sexes } = given;
  const sexOf = ({ curves, correlations }: ConstantSex) => ({
    curves: Object.fromEntries(
      curves.map(({ logMedian, sigma, lambda }, i): [string, CurveCoefficients] => [
        names[i] as Quantity,
        { logMedian: constant(logMedian), logSigma: constant(Math.log(sigma)), lambda: constant(lambda) },
      ]),
    ),
    correlations: Object.fromEntries(
      names.flatMap((first, i) =>
        names
          .slice(i + 1)
          .map((second, j) => [pairKey(first, second), constant(Math.atanh(correlations.get(i, i + 1 + j)))]),
      ),
    ),
  });
  return createBodyModel({
    version: "constant",
    sourceIds: [],
    children: 0,
    basis: { low: Math.log(45), high: Math.log(205), intervals },
    lengthRangeCm: Object.fromEntries(names.map((name) => [name, [45, 205]])),
    fittedZ: Object.fromEntries(names.map((name) => [name, [-5, 5]])),
    boys: constant(boysLogit),
    residual,
    sexes: { m: sexOf(sexes.m), f: sexOf(sexes.f) },
  });
}

/** The model with another shape of what is left of the weight. */
export function withResidual(model: BodyModel, residual: Residual): BodyModel {
  return { ...model, residual };
}

export function residualOf(model: BodyModel): Residual {
  return model.residual;
}

export function bodyAt(model: BodyModel, sex: Sex, lengthCm: number): BodyAt {
  return model.at(sex, lengthCm);
}

/** The estimate for a child measured as the children of the fit were; throws when there is none. */
export function estimateAsFitted(measurements: Measurements, model: BodyModel): WeightEstimate {
  const estimate = estimateWeight(measurements, { model });
  if (!estimate.ok) throw new Error(JSON.stringify(estimate.error));
  return estimate.value;
}
