import fc from "fast-check";
import { expect, test } from "vitest";
import { type BeamMark, placeMarks } from "./beam-marks.ts";

const widths = { ideal: 32, carer: 84, earlier: 50 } as const;
const place = (marks: readonly BeamMark[]) =>
  placeMarks({ marks, x: (kg) => kg * 10, total: 180, low: 8, high: 352, widthOf: (kind) => widths[kind] });

test("labels never cover one another, and every mark stays on the beam", () => {
  const kg = fc.double({ min: 0.5, max: 60, noNaN: true });
  fc.assert(
    fc.property(kg, kg, kg, (ideal, carer, earlier) => {
      const placed = place([
        { kind: "ideal", kg: ideal },
        { kind: "carer", kg: carer },
        { kind: "earlier", kg: earlier },
      ]);
      const spans = placed.map(({ x, right, row, kind }) => ({
        row,
        from: right ? x : x - 9 - widths[kind],
        to: right ? x + 9 + widths[kind] : x,
      }));
      for (const [i, a] of spans.entries()) {
        expect(placed[i]?.x).toBeGreaterThanOrEqual(8);
        expect(placed[i]?.x).toBeLessThanOrEqual(352);
        for (const b of spans.slice(i + 1))
          expect(a.row === b.row && a.from < b.to && b.from < a.to).toBe(false);
      }
    }),
    { seed: 8317 },
  );
});

test("a weight off the beam says on which side", () => {
  expect(place([{ kind: "carer", kg: 50 }])[0]).toMatchObject({ x: 352, beyond: "high", right: false });
  expect(place([{ kind: "carer", kg: 0.1 }])[0]).toMatchObject({ x: 8, beyond: "low", right: true });
  expect(place([{ kind: "ideal", kg: 20 }])[0]).not.toHaveProperty("beyond");
});
