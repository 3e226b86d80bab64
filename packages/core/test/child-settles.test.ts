import { nextMeasurements } from "@steelyard/core/body";
import { computeChild } from "@steelyard/core/child";
import { centimetres } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import { expect, it } from "vitest";

it("computeChild() hands what may still be measured on to the doses in doubt", () => {
  const measurements = { lengthCm: centimetres(136) };
  const settles = nextMeasurements(measurements);
  expect(settles.map(({ measurement }) => measurement)).toContain("armMm");
  const settledBy = (given: typeof settles | undefined): (string | undefined)[] => {
    const report = computeChild({
      measurements,
      formulary: draftFormulary,
      ...(given && { settles: given }),
    });
    if (!report.ok) throw new Error(report.error.type);
    return report.value.sheet.flatMap((line) =>
      line.unavailable || line.robustness?.settledBy === undefined
        ? []
        : [line.robustness.settledBy.measurement],
    );
  };
  const names = settledBy(settles);
  expect(names.length).toBeGreaterThan(0);
  expect(settles.map(({ measurement }) => measurement)).toEqual(expect.arrayContaining([...new Set(names)]));
  expect(settledBy(undefined)).toEqual([]);
});
