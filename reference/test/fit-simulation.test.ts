import { type SplineBasis, splineValue } from "@steelyard/core/body";
import { EigenvalueDecomposition, inverse, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { fitBoxCoxCurves } from "../src/fit/fit-box-cox-curves.ts";
import { fitBoys } from "../src/fit/fit-boys.ts";
import { fitCorrelation } from "../src/fit/fit-correlation.ts";
import { type SeededRandom, seededRandom } from "./seeded-random.ts";

// Curves that are known, children drawn from them, and the curves found again. Every band is tested on both sides: the
// truth lies inside, and a truth a little further off would not.
const basis: SplineBasis = { low: Math.log(45), high: Math.log(205), intervals: 20 };
const lengthsCm = [55, 75, 100, 130, 165, 190];

interface Truth {
  readonly logMedian: (x: number) => number;
  readonly sigma: (x: number) => number;
  readonly lambda: (x: number) => number;
}

function drawLengths({ uniform }: SeededRandom, rows: number): Float64Array {
  return Float64Array.from({ length: rows }, () => Math.log(50) + uniform() * Math.log(200 / 50));
}

function drawValues(random: SeededRandom, x: Float64Array, truth: Truth): Float64Array {
  return x.map((at) => {
    const lambda = truth.lambda(at);
    const z = random.normal();
    return Math.exp(truth.logMedian(at) + Math.log1p(lambda * truth.sigma(at) * z) / lambda);
  });
}

function fitted(coefficients: readonly number[] | undefined, lengthCm: number): number {
  return splineValue(basis, coefficients ?? [], Math.log(lengthCm));
}

describe("fitBoxCoxCurves()", () => {
  it("finds a power law with one spread and one skewness again, within 4 standard errors of theory", () => {
    // The penalties leave exactly these curves unpunished, so theory knows the errors: those of four constants.
    const [start, slope, sigma, lambda] = [-7, 2.2, 0.14, -0.7];
    const rows = 4000;
    const random = seededRandom(41);
    const x = drawLengths(random, rows);
    const y = drawValues(random, x, {
      logMedian: (at) => start + slope * at,
      sigma: () => sigma,
      lambda: () => lambda,
    });
    const { coefficients } = fitBoxCoxCurves({ basis, x, y });
    const errors = standardErrors({ x, sigma, lambda });
    for (const lengthCm of lengthsCm) {
      const at = Math.log(lengthCm);
      const off = [
        (fitted(coefficients[0], lengthCm) - start - slope * at) / errors.logMedian(at),
        (fitted(coefficients[1], lengthCm) - Math.log(sigma)) / errors.logSigma,
        (fitted(coefficients[2], lengthCm) - lambda) / errors.lambda,
      ];
      for (const z of off) expect(Math.abs(z)).toBeLessThan(4);
    }
    // The bands are narrow: a median 1 %, a spread 7 % or a power of 0.5 away would be seen.
    expect(8 * errors.logMedian(Math.log(100))).toBeLessThan(0.02);
    expect(8 * errors.logSigma).toBeLessThan(0.14);
    expect(8 * errors.lambda).toBeLessThan(1);
  });

  it("finds curved curves again: over 10 repeats no bias beyond chance, and no more scatter than there must be", () => {
    const truth: Truth = {
      logMedian: (x) => 2.2 * x - 7 + 0.15 * Math.sin(4 * (x - 4)),
      sigma: (x) => 0.1 + 0.08 * (x - Math.log(50)),
      lambda: (x) => -0.3 - 0.5 * (x - Math.log(50)),
    };
    const rows = 3000;
    const repeats = Array.from({ length: 10 }, (_, repeat) => {
      const random = seededRandom(500 + repeat);
      const x = drawLengths(random, rows);
      const { coefficients } = fitBoxCoxCurves({ basis, x, y: drawValues(random, x, truth) });
      return lengthsCm.map((lengthCm) => coefficients.map((curve) => fitted(curve, lengthCm)));
    });
    lengthsCm.forEach((lengthCm, i) => {
      const x = Math.log(lengthCm);
      const sigma = truth.sigma(x);
      const expected = [truth.logMedian(x), Math.log(sigma), truth.lambda(x)];
      // What a smooth curve may lose at its bends besides chance: 0.3 % of the median, 4 % of the spread, 0.15 of the power.
      const smoothing = [0.003, 0.04, 0.15];
      // Errors of a curve of 2 to 15 degrees of freedom, from those of a constant.
      const one = [sigma / Math.sqrt(rows), 1 / Math.sqrt(2 * rows), Math.sqrt(4 / 7 / rows) / sigma];
      expected.forEach((value, curve) => {
        const found = repeats.map((repeat) => repeat[i]?.[curve] as number);
        const mean = found.reduce((sum, v) => sum + v, 0) / found.length;
        const sd = Math.sqrt(found.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (found.length - 1));
        const label = `curve ${curve} at ${lengthCm} cm`;
        expect(Math.abs(mean - value), label).toBeLessThan(
          (4 * sd) / Math.sqrt(found.length) + (smoothing[curve] as number),
        );
        expect(sd / (one[curve] as number), label).toBeGreaterThan(1);
        expect(sd / (one[curve] as number), label).toBeLessThan(5);
      });
    });
  }, 30_000);

  it("gives children of a known curve z-scores that are standard normal", () => {
    const truth: Truth = { logMedian: (x) => 2 * x - 6, sigma: () => 0.16, lambda: () => -0.9 };
    const random = seededRandom(77);
    const x = drawLengths(random, 5000);
    const { coefficients } = fitBoxCoxCurves({ basis, x, y: drawValues(random, x, truth) });
    // New children, not those that were fitted.
    const others = drawLengths(random, 20_000);
    const y = drawValues(random, others, truth);
    const z = Array.from(others, (at, row) => {
      const [logMedian, logSigma, lambda] = coefficients.map((curve) => splineValue(basis, curve, at)) as [
        number,
        number,
        number,
      ];
      return (((y[row] as number) / Math.exp(logMedian)) ** lambda - 1) / (lambda * Math.exp(logSigma));
    });
    for (const [score, share] of [
      [-1.959964, 0.025],
      [-0.6744898, 0.25],
      [0, 0.5],
      [0.6744898, 0.75],
      [1.959964, 0.975],
    ] as const) {
      const found = z.filter((value) => value <= score).length / z.length;
      // Two samples' chance: 20,000 children here and 5,000 in the fit.
      const error = Math.sqrt(share * (1 - share) * (1 / 20_000 + 1 / 5000));
      expect(Math.abs(found - share)).toBeLessThan(4 * error);
    }
  });
});

describe("the weight of a row", () => {
  const rows = 400;
  const random = seededRandom(81);
  const x = drawLengths(random, rows);
  const first = x.map(random.normal);
  const second = first.map((z) => 0.8 * z + 0.6 * random.normal());
  const y = drawValues(random, x, { logMedian: (at) => 2 * at - 6, sigma: () => 0.15, lambda: () => -0.5 });
  const weights = x.map((_, row) => row % 3);
  /** Every row as often as it counts: 0, 1 or 2 times. */
  const repeated = (values: Float64Array): Float64Array =>
    Float64Array.from(
      [...values].flatMap((value, row) => new Array<number>(weights[row] as number).fill(value)),
    );

  it("counts 2 as the row given twice, and 0 as a row left out", () => {
    // Two searches from starts a little apart, to where each stops.
    const near = (a: readonly number[] | undefined, b: readonly number[] | undefined): void => {
      for (const lengthCm of lengthsCm) expect(fitted(a, lengthCm)).toBeCloseTo(fitted(b, lengthCm), 5);
    };
    const curves = fitBoxCoxCurves({ basis, x, y, weights }).coefficients;
    const twice = fitBoxCoxCurves({ basis, x: repeated(x), y: repeated(y) }).coefficients;
    for (const curve of [0, 1, 2]) near(curves[curve], twice[curve]);
    near(
      fitCorrelation({ basis, x, first, second, weights }).coefficients[0],
      fitCorrelation({ basis, x: repeated(x), first: repeated(first), second: repeated(second) })
        .coefficients[0],
    );
  });
});

describe("fitCorrelation()", () => {
  const rows = 4000;
  const rhoAt = (x: number): number => 0.6 + 0.25 * (x - Math.log(50));
  const pairs = (seed: number, slips: number) => {
    const random = seededRandom(seed);
    const x = drawLengths(random, rows);
    const first = x.map(random.normal);
    const second = x.map((at, row) => {
      const own = random.normal();
      if (random.uniform() < slips) return own;
      const rho = rhoAt(at);
      return rho * (first[row] as number) + Math.sqrt(1 - rho * rho) * own;
    });
    return { x, first, second };
  };

  // Fisher: atanh of a correlation of n pairs has the variance 1 / n. A curve of about 5 degrees of freedom spends the n
  // children on 5 numbers, so at any length its error is about that of rows / 5 pairs, and up to twice as much at the ends.
  const band = 3 * Math.sqrt(5 / rows);

  it.each([
    { what: "of clean pairs", seed: 61, slips: 0 },
    { what: "of pairs with the one slip in a hundred it leaves room for", seed: 62, slips: 0.01 },
  ])("finds the correlation $what again", ({ seed, slips }) => {
    const { coefficients } = fitCorrelation({ basis, ...pairs(seed, slips) });
    for (const lengthCm of lengthsCm) {
      const off = fitted(coefficients[0], lengthCm) - Math.atanh(rhoAt(Math.log(lengthCm)));
      expect(Math.abs(off), `${lengthCm} cm`).toBeLessThan(band);
    }
  });

  it("would not pass a correlation lower by 0.1", () => {
    for (const lengthCm of lengthsCm) {
      const rho = rhoAt(Math.log(lengthCm));
      expect(Math.atanh(rho) - Math.atanh(rho - 0.1)).toBeGreaterThan(band);
    }
  });

  it("is loosened less by gross slips than the plain product-moment correlation", () => {
    const { x, first, second } = pairs(63, 0);
    // Twenty arms typed ten times too large, far out at one end of the scale.
    for (let row = 0; row < rows; row += 200) second[row] = -6 * Math.sign(first[row] as number);
    const { coefficients } = fitCorrelation({ basis, x, first, second });
    const plain = (a: Float64Array, b: Float64Array): number =>
      a.reduce((sum, v, i) => sum + v * (b[i] as number), 0) /
      Math.sqrt(a.reduce((sum, v) => sum + v * v, 0) * b.reduce((sum, v) => sum + v * v, 0));
    const truth = Math.atanh(rhoAt(Math.log(100)));
    expect(Math.abs(fitted(coefficients[0], 100) - truth)).toBeLessThan(band);
    expect(truth - Math.atanh(plain(first, second))).toBeGreaterThan(band);
  });
});

describe("fitBoys()", () => {
  const rows = 6000;
  const logitAt = (x: number): number => 0.4 - 0.8 * (x - Math.log(50)) ** 2;

  it("finds the share of boys by length again", () => {
    const random = seededRandom(71);
    const x = drawLengths(random, rows);
    const boy = Array.from(x, (at) => random.uniform() < 1 / (1 + Math.exp(-logitAt(at))));
    const coefficients = fitBoys({ basis, x, boy });
    // The variance of a logit from n children is about 4 / n; the curve spends its children on about 5 numbers.
    const band = 3 * Math.sqrt((4 * 5) / rows);
    for (const lengthCm of lengthsCm) {
      const off = fitted(coefficients, lengthCm) - logitAt(Math.log(lengthCm));
      expect(Math.abs(off), `${lengthCm} cm`).toBeLessThan(band);
    }
    // Half of boys everywhere would be seen.
    expect(Math.max(...lengthsCm.map((lengthCm) => Math.abs(logitAt(Math.log(lengthCm)))))).toBeGreaterThan(
      band,
    );
  });
});

/**
 * Standard errors of ln M, ln S and lambda when ln M is a straight line and the others are constants, from the expected
 * information of Cole and Green.
 *
 * @source cole1992
 */
function standardErrors({ x, sigma, lambda }: { x: Float64Array; sigma: number; lambda: number }) {
  const skew = lambda * sigma;
  const perRow = [
    [(1 + 2 * skew ** 2) / sigma ** 2, (2 * skew) / sigma, -0.5],
    [(2 * skew) / sigma, 2, skew * sigma],
    [-0.5, skew * sigma, (7 * sigma ** 2) / 4],
  ];
  const information = Matrix.zeros(4, 4);
  for (const at of x) {
    const parts = [
      [1, 0, 0],
      [at, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ];
    for (let i = 0; i < 4; i++) {
      for (let j = 0; j < 4; j++) {
        let sum = 0;
        for (let p = 0; p < 3; p++)
          for (let q = 0; q < 3; q++)
            sum += (parts[i]?.[p] ?? 0) * (perRow[p]?.[q] ?? 0) * (parts[j]?.[q] ?? 0);
        information.set(i, j, information.get(i, j) + sum);
      }
    }
  }
  if (Math.min(...new EigenvalueDecomposition(information).realEigenvalues) <= 0)
    throw new Error("no information");
  const covariance = inverse(information);
  return {
    logMedian: (at: number): number =>
      Math.sqrt(covariance.get(0, 0) + 2 * at * covariance.get(0, 1) + at * at * covariance.get(1, 1)),
    logSigma: Math.sqrt(covariance.get(2, 2)),
    lambda: Math.sqrt(covariance.get(3, 3)),
  };
}
