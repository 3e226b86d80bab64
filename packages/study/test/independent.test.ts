import fQuantile from "@stdlib/stats-base-dists-f-quantile";
import studentQuantile from "@stdlib/stats-base-dists-t-quantile";
import { describe, expect, it } from "vitest";
import { concordance, type Interval, limitsOfAgreement, regressionLimits } from "../src/accuracy/index.ts";
import {
  intraclassCorrelations,
  repeatedLimits,
  technicalError,
  weightedKappa,
} from "../src/agreement/index.ts";
import { wilsonInterval } from "../src/analysis/wilson-interval.ts";
import { adjustPValues, comparePairedErrors, mcnemar, pairedDifference } from "../src/comparison/index.ts";
import { chiSquaredQuantile } from "../src/distributions/chi-squared-quantile.ts";
import { poolEffects } from "../src/pooling/index.ts";
import { limitHalfWidth, powerForShare } from "../src/sample-size/index.ts";
import cases from "./r/cases.json" with { type: "json" };
import reference from "./r/statistics.json" with { type: "json" };

// statistics.json was written by test/r/statistics.R, with R and package versions in it.
const { results } = reference;

/** Nearer than 1e-8, relative above 1. */
function expectNear(actual: readonly number[], expected: readonly number[]): void {
  expect(actual).toHaveLength(expected.length);
  for (const [i, value] of expected.entries())
    expect(
      Math.abs((actual[i] as number) - value) / Math.max(1, Math.abs(value)),
      `${actual} ${expected}`,
    ).toBeLessThan(1e-8);
}

const flat = ({ value, low, high }: Interval): number[] => [value, low, high];

describe("against R", () => {
  it("limits of agreement", () => {
    const own = limitsOfAgreement(cases.differences);
    expectNear(flat(own.bias), results.limits.bias);
    expectNear(flat(own.sd), results.limits.sd);
    expectNear(flat(own.lower), results.limits.lower);
    expectNear(flat(own.upper), results.limits.upper);
    expectNear(flat(own.approximate.upper), results.limits.approximateUpper);
  });

  it("regression-based limits", () => {
    const own = regressionLimits({ differences: cases.differences, sizes: cases.sizes });
    for (const part of ["bias", "spread"] as const) {
      expectNear(flat(own[part].intercept), results.regression[part].intercept);
      expectNear(flat(own[part].slope), results.regression[part].slope);
      expectNear([own[part].p], [results.regression[part].p]);
    }
    const { bias, lower, upper } = own.at(20);
    expectNear([bias, lower, upper], results.regression.at20);
  });

  it("concordance", () => {
    const own = concordance({ first: cases.first, second: cases.second });
    expectNear([...flat(own), own.precision], results.concordance);
  });

  it.each(cases.pairs.map((counts, i) => ({ counts, expected: results.pairs[i] })))(
    "McNemar and the paired difference of $counts",
    ({ counts, expected }) => {
      const [both, onlyFirst, onlySecond, neither] = counts as [number, number, number, number];
      const own = { both, onlyFirst, onlySecond, neither };
      expectNear(Object.values({ ...mcnemar(own), ...pairedDifference(own) }), Object.values(expected ?? {}));
    },
  );

  it("adjusted p values", () => {
    expectNear(adjustPValues(cases.pValues, "holm"), results.holm);
    expectNear(adjustPValues(cases.pValues, "benjamini-hochberg"), results.bh);
  });

  it("tests of paired errors", () => {
    const own = comparePairedErrors({ first: cases.errorsFirst, second: cases.errorsSecond });
    for (const part of ["squared", "absolute"] as const)
      expectNear([...flat(own[part].difference), own[part].t, own[part].p], results.errors[part]);
    expectNear(Object.values(own.spread), results.errors.spread);
  });

  it("intraclass correlations", () => {
    const own = intraclassCorrelations(cases.readings);
    expectNear(flat(own.oneWay.single), results.icc.ICC1);
    expectNear(flat(own.twoWayRandom.single), results.icc.ICC2);
    expectNear(flat(own.twoWayFixed.single), results.icc.ICC3);
    expectNear(flat(own.oneWay.mean), results.icc.ICC1k);
    expectNear(flat(own.twoWayRandom.mean), results.icc.ICC2k);
    expectNear(flat(own.twoWayFixed.mean), results.icc.ICC3k);
  });

  it("kappa", () => {
    for (const weighting of ["none", "linear", "quadratic"] as const) {
      const { kappa, standardError, low, high } = weightedKappa(cases.kappa, weighting);
      expectNear([kappa, standardError, low, high], results.kappa[weighting]);
    }
    const [plain, , quadratic] = results.kappaPsych;
    expectNear([weightedKappa(cases.kappa, "none").kappa], [plain as number]);
    expectNear([weightedKappa(cases.kappa, "quadratic").kappa], [quadratic as number]);
  });

  it("technical error", () => {
    const own = technicalError(cases.readingsTwo);
    expectNear(flat(own.tem), results.tem.tem);
    expectNear([own.relativePercent, own.reliability], [results.tem.relative, results.tem.reliability]);
  });

  it.each(["varying", "constant"] as const)("repeated limits, true value %s", (trueValue) => {
    const own = repeatedLimits(cases.repeated, trueValue);
    expectNear(flat(own.bias), results.repeated[trueValue].bias);
    expectNear(flat(own.sd), results.repeated[trueValue].sd);
    expectNear(flat(own.upper), results.repeated[trueValue].upper);
  });

  it.each([
    ["dl", "dersimonian-laird", false],
    ["dlhk", "dersimonian-laird", true],
    ["reml", "reml", false],
    ["remlhk", "reml", true],
  ] as const)("pooling %s", (name, between, hartungKnapp) => {
    const effects = cases.effects.map((effect, i) => ({ effect, variance: cases.variances[i] as number }));
    expectPooled(poolEffects(effects, { between, hartungKnapp }), results.pool[name]);
  });

  it("pooling of sites that do not differ", () => {
    const effects = cases.effectsAlike.map((effect, i) => ({
      effect,
      variance: cases.variancesAlike[i] as number,
    }));
    const own = poolEffects(effects, { hartungKnapp: false });
    expect(own.tauSquared).toBe(0);
    expectPooled(own, results.pool.alike);
  });

  it("Wilson's interval, power and half-widths", () => {
    for (const [i, [count, n]] of cases.wilson.entries()) {
      const { low, high } = wilsonInterval(count as number, n as number);
      expectNear([low, high], results.wilson[i] as number[]);
    }
    for (const [i, [children, target, expected]] of (cases.power as [number, number, number][]).entries())
      expectNear([powerForShare({ children, target, expected })], [results.power[i] as number]);
    expectNear(
      [50, 100, 200].map((n) => limitHalfWidth(n)),
      results.limitHalfWidth,
    );
  });

  it("quantiles of the distributions library", () => {
    for (const [i, p] of cases.quantiles.p.entries())
      for (const [j, df] of cases.quantiles.df.entries()) {
        expectNear([studentQuantile(p, df)], [results.t[i]?.[j] as number]);
        expectNear([chiSquaredQuantile(p, df)], [results.chisq[i]?.[j] as number]);
        // R itself takes the limit beyond 400,000, and only readers' tables, which are small, need F.
        if (df <= 5000) expectNear([fQuantile(p, 5, df)], [results.f[i]?.[j] as number]);
      }
  });
});

function expectPooled(own: ReturnType<typeof poolEffects>, expected: (typeof results.pool)["dl"]): void {
  expectNear(flat(own.pooled), expected.pooled);
  expectNear(
    [own.standardError, own.p, own.tauSquared, own.iSquaredPercent, own.q],
    [expected.se, expected.p, expected.tau2, expected.i2, expected.q],
  );
  expectNear([own.prediction?.low ?? 0, own.prediction?.high ?? 0], expected.prediction);
  expectNear(own.shares, expected.shares);
}
