import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  ceilToMultiple,
  compare,
  divide,
  exactly,
  floorToMultiple,
  fraction,
  multiply,
  roundToMultiple,
  subtract,
  toNumber,
} from "./rational.ts";

const RUNS = { seed: 20261125, numRuns: 500 };

/** Decimals as a formulary writes them, up to six places. */
const decimal = fc
  .tuple(fc.integer({ min: 1, max: 99_999 }), fc.integer({ min: 0, max: 6 }))
  .map(([digits, places]) => Number(`${digits}e-${places}`));

describe("exactly()", () => {
  it.each([
    [0.1, 1, 10],
    [0.3, 3, 10],
    [28.1, 281, 10],
    [1e-7, 1, 10_000_000],
    [2.5e9, 2_500_000_000, 1],
    [-0.25, -1, 4],
    [0, 0, 1],
  ])("takes %d as %d/%d", (value, numerator, denominator) => {
    expect(exactly(value)).toEqual({ numerator, denominator });
  });

  it("gives back the number it was made from", () => {
    fc.assert(
      fc.property(decimal, (value) => toNumber(exactly(value)) === value),
      RUNS,
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, 0.1234567890123456])("throws on %d", (value) => {
    expect(() => exactly(value)).toThrow(RangeError);
  });
});

describe("multiply(), divide() and subtract()", () => {
  it("do not drift where floating point does", () => {
    expect(0.1 * 3).not.toBe(0.3);
    expect(toNumber(multiply(exactly(0.1), exactly(3)))).toBe(0.3);
    expect(toNumber(subtract(exactly(0.3), exactly(0.1)))).toBe(0.2);
  });

  it("agree with whole-number arithmetic of any size", () => {
    const check = fc.property(decimal, decimal, (a, b) => {
      const [x, y] = [exactly(a), exactly(b)];
      const [p, q, r] = [multiply(x, y), divide(x, y), subtract(x, y)];
      const big = (value: number) => BigInt(value);
      expect(big(p.numerator) * big(x.denominator) * big(y.denominator)).toBe(
        big(p.denominator) * big(x.numerator) * big(y.numerator),
      );
      expect(big(q.numerator) * big(x.denominator) * big(y.numerator)).toBe(
        big(q.denominator) * big(x.numerator) * big(y.denominator),
      );
      expect(big(r.numerator) * big(x.denominator) * big(y.denominator)).toBe(
        big(r.denominator) * (big(x.numerator) * big(y.denominator) - big(y.numerator) * big(x.denominator)),
      );
    });
    fc.assert(check, RUNS);
  });

  it("throw where the result would not be exact", () => {
    const huge = { numerator: 2 ** 52 + 1, denominator: 1 };
    expect(() => multiply(huge, huge)).toThrow(RangeError);
    expect(() => divide(exactly(1), exactly(0))).toThrow("divisor must be positive");
    expect(() => fraction(1, 0)).toThrow("denominator must be positive");
    expect(() => fraction(0.5, 1)).toThrow(RangeError);
  });
});

describe("rounding to multiples", () => {
  it.each([
    { value: 2.62, step: 0.1, floor: 2.6, round: 2.6, ceil: 2.7 },
    { value: 2.65, step: 0.1, floor: 2.6, round: 2.6, ceil: 2.7 },
    { value: 2.66, step: 0.1, floor: 2.6, round: 2.7, ceil: 2.7 },
    { value: 0.3, step: 0.1, floor: 0.3, round: 0.3, ceil: 0.3 },
    { value: 0.004, step: 0.01, floor: 0, round: 0, ceil: 0.01 },
  ])("$value by $step, a tie goes down", ({ value, step, floor, round, ceil }) => {
    const [x, s] = [exactly(value), exactly(step)];
    expect(toNumber(floorToMultiple(x, s))).toBe(floor);
    expect(toNumber(roundToMultiple(x, s))).toBe(round);
    expect(toNumber(ceilToMultiple(x, s))).toBe(ceil);
  });

  it("brackets the value by less than one step", () => {
    const check = fc.property(decimal, decimal, (a, b) => {
      const [x, step] = [exactly(a), exactly(b)];
      const [below, above] = [floorToMultiple(x, step), ceilToMultiple(x, step)];
      return (
        compare(below, x) <= 0 &&
        compare(above, x) >= 0 &&
        compare(subtract(x, below), step) < 0 &&
        compare(subtract(above, x), step) < 0
      );
    });
    fc.assert(check, RUNS);
  });
});
