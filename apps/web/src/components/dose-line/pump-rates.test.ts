import fc from "fast-check";
import { expect, test } from "vitest";
import { pumpRates, threeFigures } from "./pump-rates.ts";

test("round steps between the ends", () => {
  expect(pumpRates({ lowMlPerH: 0.3, highMlPerH: 3.4 })).toEqual([0.3, 0.5, 1, 1.5, 2, 2.5, 3, 3.4]);
  expect(pumpRates({ lowMlPerH: 2, highMlPerH: 2 })).toEqual([2]);
  expect(pumpRates({ lowMlPerH: 0.1, highMlPerH: 0.3 })).toEqual([0.1, 0.2, 0.3]);
});

test("both ends, rising, nine at most, whatever the range", () => {
  const tenths = fc.integer({ min: 1, max: 20_000 }).map((rate) => rate / 10);
  fc.assert(
    fc.property(tenths, tenths, (a, b) => {
      const range = { lowMlPerH: Math.min(a, b), highMlPerH: Math.max(a, b) };
      const rates = pumpRates(range);
      expect(rates[0]).toBe(range.lowMlPerH);
      expect(rates.at(-1)).toBe(range.highMlPerH);
      expect(rates.length).toBeLessThanOrEqual(9);
      for (const [i, rate] of rates.entries()) if (i > 0) expect(rate).toBeGreaterThan(rates[i - 1] ?? 0);
    }),
    { seed: 8317 },
  );
});

test.each([
  [0.012345, 0.0123],
  [1234.5, 1230],
  [2, 2],
  [0, 0],
])("%d to three figures is %d", (amount, written) => expect(threeFigures(amount)).toBeCloseTo(written, 12));
