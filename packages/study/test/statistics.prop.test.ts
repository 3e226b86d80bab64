import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { concordance, limitsOfAgreement, regressionLimits } from "../src/accuracy/index.ts";
import { intraclassCorrelations, technicalError, weightedKappa } from "../src/agreement/index.ts";
import { adjustPValues, comparePairedErrors, mcnemar, pairedDifference } from "../src/comparison/index.ts";
import { poolEffects, poolSites, readSiteSummary, summariseSite } from "../src/pooling/index.ts";

const options = { seed: 20260101, numRuns: 60 };
const value = fc.integer({ min: -4000, max: 4000 }).map((x) => x / 100);
const values = fc.array(value, { minLength: 4, maxLength: 40 }).filter((all) => new Set(all).size > 3);
const kg = fc.integer({ min: 300, max: 9000 }).map((x) => x / 100);
const weights = fc
  .array(fc.tuple(kg, fc.integer({ min: 70, max: 140 })), { minLength: 6, maxLength: 40 })
  .filter((all) => new Set(all.map(([, share]) => share)).size > 2);
const counts = fc
  .record({ both: fc.nat(300), onlyFirst: fc.nat(300), onlySecond: fc.nat(300), neither: fc.nat(300) })
  .filter((c) => c.both + c.onlyFirst + c.onlySecond + c.neither > 0);
const table = fc.array(fc.tuple(value, value, value), { minLength: 4, maxLength: 20 });

function near(actual: number, expected: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(expected)));
}

describe("statistics of a study", () => {
  it("limits turn over with their sign when the methods are swapped, and scale with the unit", () => {
    fc.assert(
      fc.property(values, fc.constantFrom(0.001, 2.5, 1000), (own, factor) => {
        const plain = limitsOfAgreement(own);
        const swapped = limitsOfAgreement(own.map((x) => -x));
        near(swapped.lower.low, -plain.upper.high);
        near(swapped.upper.value, -plain.lower.value);
        near(limitsOfAgreement(own.map((x) => x * factor)).upper.high, factor * plain.upper.high);
        near(limitsOfAgreement([...own].reverse()).upper.low, plain.upper.low);
      }),
      options,
    );
  });

  it("a proportional bias changes with the unit as a slope does", () => {
    fc.assert(
      fc.property(values, (sizes) => {
        const differences = sizes.map((size, i) => 0.2 * size + Math.sin(i));
        const inKg = regressionLimits({ differences, sizes });
        const inGrams = regressionLimits({
          differences: differences.map((x) => 1000 * x),
          sizes: sizes.map((x) => 1000 * x),
        });
        near(inGrams.bias.slope.value, inKg.bias.slope.value);
        near(inGrams.bias.p, inKg.bias.p);
      }),
      options,
    );
  });

  it("concordance knows no first and second, lies in its interval and within -1 and 1", () => {
    fc.assert(
      fc.property(weights, (pairs) => {
        const first = pairs.map(([weight]) => weight);
        const second = pairs.map(([weight, share]) => (weight * share) / 100);
        if (new Set(first).size < 2 || new Set(second).size < 2) return;
        const own = concordance({ first, second });
        const swapped = concordance({ first: second, second: first });
        near(swapped.value, own.value);
        near(swapped.low, own.low);
        expect(own.low).toBeLessThanOrEqual(own.value + 1e-12);
        expect(own.high).toBeGreaterThanOrEqual(own.value - 1e-12);
        expect(Math.abs(own.value)).toBeLessThanOrEqual(1 + 1e-12);
      }),
      options,
    );
  });

  it("a paired difference turns its sign when the methods are swapped; McNemar does not care", () => {
    fc.assert(
      fc.property(counts, (own) => {
        const swapped = { ...own, onlyFirst: own.onlySecond, onlySecond: own.onlyFirst };
        const plain = pairedDifference(own);
        const turned = pairedDifference(swapped);
        near(turned.low, -plain.high);
        near(turned.value, -plain.value);
        near(mcnemar(swapped).exactP, mcnemar(own).exactP);
        expect(mcnemar(own).midP).toBeLessThanOrEqual(mcnemar(own).exactP);
        expect(plain.low).toBeLessThanOrEqual(plain.value);
        expect(plain.high).toBeGreaterThanOrEqual(plain.value);
      }),
      options,
    );
  });

  it("errors are compared alike from both sides", () => {
    fc.assert(
      fc.property(table, (rows) => {
        const first = rows.map(([a]) => a);
        const second = rows.map(([, b]) => b);
        const own = comparePairedErrors({ first, second });
        const swapped = comparePairedErrors({ first: second, second: first });
        near(swapped.squared.p, own.squared.p);
        near(swapped.squared.difference.low, -own.squared.difference.high);
        expect([own.spread.sdRatio, own.spread.t, own.absolute.t].every(Number.isFinite)).toBe(true);
      }),
      options,
    );
  });

  it("adjusted p values are never smaller, and keep the order", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.integer({ min: 0, max: 1000 }).map((x) => x / 1000),
          { maxLength: 12 },
        ),
        (own) => {
          const holm = adjustPValues(own, "holm");
          const hochberg = adjustPValues(own, "benjamini-hochberg");
          for (const [i, p] of own.entries()) {
            expect(hochberg[i]).toBeGreaterThanOrEqual(p - 1e-12);
            expect(holm[i]).toBeGreaterThanOrEqual((hochberg[i] as number) - 1e-12);
          }
        },
      ),
      options,
    );
  });

  it("correlations of readers do not change with the order of children and readers, or the unit", () => {
    fc.assert(
      fc.property(table, (rows) => {
        const usable = new Set(rows.map(([a]) => a)).size > 2 && rows.some(([a, b, c]) => a - b !== b - c);
        if (!usable) return;
        const plain = attempt(() => intraclassCorrelations(rows));
        if (plain === undefined) return;
        const turned = intraclassCorrelations(
          [...rows].reverse().map(([a, b, c]) => [10 * c, 10 * a, 10 * b]),
        );
        near(turned.twoWayRandom.single.value, plain.twoWayRandom.single.value);
        near(turned.oneWay.mean.value, plain.oneWay.mean.value);
        const tem = attempt(() => technicalError(rows));
        const scaled = attempt(() => technicalError(rows.map((row) => row.map((x) => 10 * x))));
        if (tem && scaled) near(scaled.tem.high, 10 * tem.tem.high);
      }),
      options,
    );
  });

  it("kappa does not care who is the first reader, nor, unweighted, for the order of classes", () => {
    fc.assert(
      fc.property(fc.array(fc.nat(50), { minLength: 9, maxLength: 9 }), (cells) => {
        const matrix = [cells.slice(0, 3), cells.slice(3, 6), cells.slice(6)] as number[][];
        const own = attempt(() => weightedKappa(matrix, "linear"));
        if (own === undefined) return;
        const turned = matrix.map((_, j) => matrix.map((row) => row[j] as number));
        near(weightedKappa(turned, "linear").kappa, own.kappa);
        near(weightedKappa(turned, "linear").standardError, own.standardError);
        const order = [2, 0, 1];
        const relabelled = order.map((i) => order.map((j) => matrix[i]?.[j] as number));
        near(weightedKappa(relabelled, "none").kappa, weightedKappa(matrix, "none").kappa);
      }),
      options,
    );
  });

  it("pooled effects move and scale with the effects, and the order of sites does not matter", () => {
    const effect = fc.record({
      effect: value,
      variance: fc.integer({ min: 1, max: 400 }).map((x) => x / 100),
    });
    fc.assert(
      fc.property(fc.array(effect, { minLength: 3, maxLength: 12 }), (effects) => {
        const own = poolEffects(effects);
        const turned = poolEffects([...effects].reverse());
        const moved = poolEffects(effects.map((one) => ({ ...one, effect: one.effect + 100 })));
        expect(Math.abs(turned.pooled.value - own.pooled.value)).toBeLessThan(1e-7);
        expect(Math.abs(moved.pooled.low - own.pooled.low - 100)).toBeLessThan(1e-6);
        expect(own.iSquaredPercent).toBeGreaterThanOrEqual(0);
        expect(own.iSquaredPercent).toBeLessThan(100);
        expect(own.shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
      }),
      options,
    );
  });

  it("summary files give exactly the pooled figures of the rows, in whatever order they arrive", () => {
    fc.assert(
      fc.property(fc.array(weights, { minLength: 3, maxLength: 5 }), (sites) => {
        const own = sites.map((pairs, i) =>
          summariseSite({
            site: `site ${i}`,
            trueKg: Float64Array.from(pairs, ([weight]) => weight),
            methods: [
              {
                method: "new",
                estimateKg: Float64Array.from(pairs, ([weight, share]) => (weight * share) / 100),
              },
            ],
          }),
        );
        const files = own.map((summary) => JSON.stringify(summary)).reverse();
        const read = files.map((text) => {
          const result = readSiteSummary(text);
          if (!result.ok) throw new Error(JSON.stringify(result.error));
          return result.value;
        });
        expect(poolSites(read)).toEqual(poolSites(own));
        expect(poolSites(own)).toHaveLength(1);
      }),
      options,
    );
  });
});

/** Undefined where the values leave nothing to compute: the functions refuse those. */
function attempt<T>(compute: () => T): T | undefined {
  try {
    return compute();
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}
