import type { Measurements, Quantity } from "@steelyard/core/body";
import fc from "fast-check";
import { CholeskyDecomposition, determinant, inverse, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { type Curve, formulaSlope, formulaValue, formulaZ } from "./box-cox-formula.ts";
import { type ConstantSex, constantModel, estimateAsFitted } from "./known-model.ts";

// The conditional normal by the textbook: mean = r R^-1 z, variance = 1 - r R^-1 r, with the inverse and the determinant
// of ml-matrix, on random correlations and one to six observations; then the model's own bend of mean and spread, by the
// formulas of its comments.
const names = ["weight", "arm", "waist", "thigh", "calf", "head", "age"] as const satisfies Quantity[];
const keys = ["armMm", "waistCm", "thighCm", "calfCm", "headCm", "ageMonths"] as const;
const typical = [20, 190, 60, 40, 28, 45, 100];
const residual = { spreadPower: 0.4, tailDf: 8, scale: 0.9 };
const bend = [0.1, -0.05, 0.08, 0.02];

const entry = fc.double({ min: -1, max: 1, noNaN: true });

/** Random positive definite correlations: A A' with a ridge, scaled to ones on the diagonal. */
const correlations = fc
  .array(fc.array(entry, { minLength: 9, maxLength: 9 }), { minLength: 7, maxLength: 7 })
  .map((rows) => {
    const a = new Matrix(rows);
    const product = a.mmul(a.transpose()).add(Matrix.eye(7).mul(0.1));
    const scale = Matrix.diag(product.diagonal().map((d) => 1 / Math.sqrt(d)));
    const scaled = scale.mmul(product).mmul(scale);
    // Rounding leaves the halves a hair apart, and ml-matrix wants them the same.
    return scaled.clone().add(scaled.transpose()).mul(0.5);
  });
const curve = fc.record({
  sigma: fc.double({ min: 0.05, max: 0.2, noNaN: true }),
  lambda: fc.integer({ min: -150, max: 150 }).map((hundredths) => hundredths / 100),
});
const sex = fc.record({ correlations, shapes: fc.array(curve, { minLength: 7, maxLength: 7 }) }).map(
  ({ correlations: own, shapes }): ConstantSex => ({
    correlations: own,
    curves: shapes.map((shape, i) => ({ ...shape, logMedian: Math.log(typical[i] as number) })),
  }),
);
const child = fc.record({
  m: sex,
  f: sex,
  boysLogit: fc.double({ min: -1, max: 1, noNaN: true }),
  draws: fc.array(fc.double({ min: -1.2, max: 1.2, noNaN: true }), { minLength: 7, maxLength: 7 }),
});

/** A child whose measurements go together: z = L e, from the correlations of boys. */
function measure(boys: ConstantSex, draws: readonly number[], count: number): readonly number[] {
  const z = new CholeskyDecomposition(boys.correlations).lowerTriangularMatrix.mmul(
    Matrix.columnVector([...draws]),
  );
  return Array.from({ length: count }, (_, i) => formulaValue(boys.curves[i + 1] as Curve, z.get(i + 1, 0)));
}

function named(values: readonly number[]): Measurements {
  // Age counts from conception in the model, nine months before birth.
  const measured = values.map((value, i) => [keys[i], keys[i] === "ageMonths" ? value - 9 : value]);
  return Object.fromEntries([["lengthCm", 100], ...measured]) as Measurements;
}

/**
 * The textbook's answer. `observed` are columns of the correlations, 0 being the weight itself; `logVariances` the errors
 * of each value's logarithm beyond the fit's own.
 */
function textbook(given: {
  sex: ConstantSex;
  observed: readonly number[];
  values: readonly number[];
  logVariances?: readonly number[];
}) {
  const { curves, correlations: own } = given.sex;
  const { observed, values, logVariances = values.map(() => 0) } = given;
  const curveOf = (i: number): Curve => curves[observed[i] as number] as Curve;
  const z = Matrix.columnVector(values.map((value, i) => formulaZ(curveOf(i), value)));
  const slopes = values.map((value, i) => formulaSlope(curveOf(i), value));
  const r = Matrix.rowVector(observed.map((i) => own.get(0, i)));
  const errors = Matrix.diag(slopes.map((slope, i) => (logVariances[i] as number) * slope ** 2));
  const block = own.selection([...observed], [...observed]).add(errors);
  const precision = inverse(block);
  const mean = r.mmul(precision).mmul(z).get(0, 0);
  const { lambda, sigma } = curves[0] as Curve;
  const variance = 1 - r.mmul(precision).mmul(r.transpose()).get(0, 0);
  return {
    // The bend is a cubic held beyond -1.25 and 2.5, in units of variance (1 - variance).
    mean:
      mean +
      variance *
        (1 - variance) *
        bend.reduce((sum, c, power) => sum + c * Math.min(Math.max(mean, -1.25), 2.5) ** power, 0),
    spread:
      Math.sqrt(variance) *
      residual.scale *
      Math.max(1 + lambda * sigma * mean, 0.25) ** residual.spreadPower,
    // Of the measurements themselves, per unit of each logarithm; (2 pi)^-k/2 is the same for both sexes.
    density:
      (Math.exp(-z.transpose().mmul(precision).mmul(z).get(0, 0) / 2) / Math.sqrt(determinant(block))) *
      slopes.reduce((product, slope) => product * slope, 1),
  };
}

const counts = [1, 2, 3, 4, 5, 6];
const runs = { numRuns: 60 } as const;

describe("the weight's z given one to six measurements", () => {
  it("has the mean and spread of the textbook, to 1e-10", () => {
    fc.assert(
      fc.property(child, ({ m, f, boysLogit, draws }) => {
        const model = constantModel({ names, residual, bend, boysLogit, sexes: { m, f } });
        for (const count of counts) {
          const values = measure(m, draws, count);
          const { rests, components } = estimateAsFitted({ ...named(values), sex: "m" }, model);
          expect(rests).toHaveLength(count + 2);
          expect(components).toHaveLength(1);
          const { mean, spread } = textbook({ sex: m, observed: counts.slice(0, count), values });
          expect(Math.abs((components[0]?.zMean ?? Number.NaN) - mean)).toBeLessThan(1e-10);
          expect(Math.abs((components[0]?.zScale ?? Number.NaN) - spread)).toBeLessThan(1e-10);
          expect(components[0]?.tailDf).toBe(residual.tailDf);
        }
      }),
      { seed: 51, ...runs },
    );
  });

  it("is weighed between the sexes as Bayes says, to 1e-10", () => {
    fc.assert(
      fc.property(child, ({ m, f, boysLogit, draws }) => {
        const model = constantModel({ names, residual, bend, boysLogit, sexes: { m, f } });
        const boy = 1 / (1 + Math.exp(-boysLogit));
        for (const count of counts) {
          const values = measure(m, draws, count);
          const { rests, components } = estimateAsFitted(named(values), model);
          expect(rests).toHaveLength(count + 1);
          const densityOf = (sex: ConstantSex): number =>
            textbook({ sex, observed: counts.slice(0, count), values }).density;
          const odds = [boy * densityOf(m), (1 - boy) * densityOf(f)] as const;
          const probabilities = components.map(({ probability }) => probability);
          expect(probabilities).toHaveLength(2);
          expect(Math.abs((probabilities[0] as number) - odds[0] / (odds[0] + odds[1]))).toBeLessThan(1e-10);
          expect((probabilities[0] as number) + (probabilities[1] as number)).toBeCloseTo(1, 14);
        }
      }),
      { seed: 52, ...runs },
    );
  });

  it("takes the arm's error, and a weight that was only stated, as the textbook does, to 1e-10", () => {
    const errors = { armSdMm: 6, carerLogSd: 0.1 };
    fc.assert(
      fc.property(child, ({ m, f, boysLogit, draws }) => {
        const model = constantModel({ names, residual, bend, boysLogit, sexes: { m, f } });
        const values = measure(m, draws, 2);
        const carerKg = (typical[0] as number) * 1.02;
        const known = { ...named(values), carerKg, sex: "m" } as Measurements;
        const { rests, components } = estimateAsFitted(known, model, errors);
        // A stated weight that the tape contradicts is set aside, which is tested elsewhere.
        fc.pre(rests.length === 5);
        // The arms of the fit were read with an error of 3.15 mm, which its correlations hold already.
        const armVariance = (errors.armSdMm ** 2 - 3.15 ** 2) / (values[0] as number) ** 2;
        const { mean, spread } = textbook({
          sex: m,
          observed: [1, 2, 0],
          values: [...values, carerKg],
          logVariances: [armVariance, 0, errors.carerLogSd ** 2],
        });
        expect(Math.abs((components[0]?.zMean ?? Number.NaN) - mean)).toBeLessThan(1e-10);
        expect(Math.abs((components[0]?.zScale ?? Number.NaN) - spread)).toBeLessThan(1e-10);
      }),
      { seed: 53, ...runs },
    );
  });
});
