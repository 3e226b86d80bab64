import { describe, expect, it } from "vitest";
import { measureAccuracy } from "../src/accuracy.ts";
import { accuracyTable } from "../src/accuracy-table.ts";

const judged = (
  estimateKg: number,
  trueKg: number,
  low95Kg = 0.9 * estimateKg,
  high95Kg = 1.1 * estimateKg,
) => ({
  estimateKg,
  trueKg,
  low95Kg,
  high95Kg,
});

// Worked by hand. Errors +10 %, -10 %, +25 %, 0 %, -20 %: three within 10 %, four within 20 %; mean 5 / 5 = 1 %; squares about it
// 81 + 121 + 576 + 1 + 441 = 1220, over 4 = 305. Intervals of 10 % about the estimate cover 20 (of 22), 20 (of 20), 20
// (of 18: 16.2 to 19.8, no), 20 (of 25, no), 20 (of 16, no).
const five = [judged(22, 20), judged(18, 20), judged(25, 20), judged(20, 20), judged(16, 20)];

describe("measureAccuracy()", () => {
  it("gives the figures worked by hand", () => {
    const accuracy = measureAccuracy(five);
    expect(accuracy.children).toBe(5);
    expect(accuracy.pw10).toBe(60);
    expect(accuracy.pw20).toBe(80);
    expect(accuracy.meanError).toBeCloseTo(1, 10);
    expect(accuracy.sdError).toBeCloseTo(Math.sqrt(305), 10);
    expect(accuracy.coverage).toBe(40);
    expect(accuracy.halfWidth).toBeCloseTo(10, 10);
  });

  it("counts an error of exactly 10 or 20 % as within, whatever rounding does, and just above as not", () => {
    expect(measureAccuracy([judged(0.11, 0.1), judged(0.33, 0.3)]).pw10).toBe(100);
    expect(measureAccuracy([judged(1.2, 1)]).pw20).toBe(100);
    expect(measureAccuracy([judged(1.1001, 1)]).pw10).toBe(0);
    expect(measureAccuracy([judged(0.7999, 1)]).pw20).toBe(0);
  });

  it("covers at the very ends of the interval", () => {
    expect(
      measureAccuracy([judged(10, 9, 9, 11), judged(10, 11, 9, 11), judged(10, 11.1, 9, 11)]).coverage,
    ).toBeCloseTo(200 / 3, 10);
  });

  it("throws when there is nobody to measure", () => {
    expect(() => measureAccuracy([])).toThrow("Cannot measure accuracy as rows must not be empty");
  });
});

describe("accuracyTable()", () => {
  it("writes a row for each group, and only the number of a small one", () => {
    const table = accuracyTable("group", [
      ["ten", [...five, ...five]],
      ["five", five],
    ]);
    const [head, rule, ten, fewer] = table.split("\n");
    expect(head).toMatch(/^\| group \| children \| within 10 % \| within 20 % \| mean error % \|/);
    expect(rule?.match(/---/g)).toHaveLength(8);
    // SD by n - 1: the root of 2440 / 9.
    expect(ten).toBe("| ten | 10 | 60.00 | 80.00 | 1.00 | 16.47 | 40.0 | 10.0 |");
    expect(fewer).toBe(`| five | 5 |${" – |".repeat(6)}`);
  });
});
