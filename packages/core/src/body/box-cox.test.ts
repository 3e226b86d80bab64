import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boxCoxLogValue, boxCoxSlope, boxCoxZ } from "./box-cox.ts";

const curves = fc.record({
  logMedian: fc.double({ min: 0, max: 6, noNaN: true }),
  sigma: fc.double({ min: 0.05, max: 0.3, noNaN: true }),
  lambda: fc.double({ min: -3, max: 3, noNaN: true }),
});

describe("the Box-Cox transform", () => {
  // WHO 2006, weight for length, boys, 85 cm: L -0.3521, M 11.5007, S 0.08181 (source who-growth-2006); the simplified
  // table prints 9.8 kg at -2 SD and 13.6 kg at +2 SD.
  it.each([
    { z: -2, kg: 9.8 },
    { z: 2, kg: 13.6 },
  ])("gives WHO's printed weight at $z SD", ({ z, kg }) => {
    const curve = { logMedian: Math.log(11.5007), sigma: 0.08181, lambda: -0.3521 };
    expect(Math.abs(Math.exp(boxCoxLogValue(curve, z)) - kg)).toBeLessThanOrEqual(0.05);
  });

  it("goes there and back, in the straight tails too", () => {
    fc.assert(
      fc.property(curves, fc.double({ min: -8, max: 8, noNaN: true }), (curve, z) => {
        const logValue = boxCoxLogValue(curve, z);
        expect(Number.isFinite(logValue)).toBe(true);
        expect(boxCoxZ(curve, logValue)).toBeCloseTo(z, 6);
      }),
      { seed: 2 },
    );
  });

  it("rises everywhere, with the slope it says", () => {
    fc.assert(
      fc.property(curves, fc.double({ min: -6, max: 6, noNaN: true }), (curve, z) => {
        const logValue = boxCoxLogValue(curve, z);
        const h = 1e-6;
        const slope = (boxCoxZ(curve, logValue + h) - boxCoxZ(curve, logValue - h)) / (2 * h);
        expect(boxCoxSlope(curve, logValue)).toBeGreaterThan(0);
        expect(slope / boxCoxSlope(curve, logValue)).toBeCloseTo(1, 2);
      }),
      { seed: 3 },
    );
  });
});
