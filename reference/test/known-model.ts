import {
  type BodyModel,
  type BodyReference,
  type CurveCoefficients,
  createBodyModel,
  estimateWeight,
  type MeasurementErrors,
  type Measurements,
  pairKey,
  type Quantity,
  type Residual,
  referenceSite,
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
  /** Coefficients of 1, m, m^2 and m^3. */
  bend: readonly number[];
  boysLogit: number;
  sexes: Readonly<Record<Sex, ConstantSex>>;
}): BodyModel {
  const { names, residual, bend, boysLogit, sexes } = given;
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
  const reference: BodyReference = {
    version: "constant",
    sourceIds: [],
    children: 0,
    index: { quantity: "length", low: 45, high: 205, fittedLow: 45, fittedHigh: 205, step: 40 },
    basis: { low: Math.log(45), high: Math.log(205), intervals },
    indexRange: Object.fromEntries(names.map((name) => [name, [45, 205]])),
    fittedZ: Object.fromEntries(names.map((name) => [name, [-5, 5]])),
    boys: constant(boysLogit),
    residual,
    bend: bend.map(constant),
    sexes: { m: sexOf(sexes.m), f: sexOf(sexes.f) },
  };
  return createBodyModel({ byLength: reference, byAge: reference });
}

/** The model as a plain joint normal: no bend of the mean, no bend of the spread, and tails that are nearly normal. */
export function asJointNormal(model: BodyModel): BodyModel {
  const { byLength } = model;
  return {
    ...model,
    byLength: {
      ...byLength,
      residual: { spreadPower: 0, tailDf: 20_000, scale: 1 },
      at: (sex, lengthCm) => {
        const at = byLength.at(sex, lengthCm);
        return {
          share: at.share,
          curve: (quantity) => at.curve(quantity),
          fitted: (quantity) => at.fitted(quantity),
          correlation: (first, second) => at.correlation(first, second),
          bend: () => 0,
        };
      },
    },
  };
}

/** The estimate for a child measured as the children of the fit were, or with other errors; throws when there is none. */
export function estimateAsFitted(
  measurements: Measurements,
  model: BodyModel,
  errors: Partial<MeasurementErrors> = {},
): WeightEstimate {
  const site = { ...referenceSite, errors: { ...referenceSite.errors, ...errors } };
  const estimate = estimateWeight(measurements, { model, site });
  if (!estimate.ok) throw new Error(JSON.stringify(estimate.error));
  return estimate.value;
}
