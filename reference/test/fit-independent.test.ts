import { readFileSync } from "node:fs";
import { type SplineBasis, splineValue } from "@steelyard/core/body";
import { beforeAll, describe, expect, it } from "vitest";
import { fitBoxCoxCurves } from "../src/fit/fit-box-cox-curves.ts";
import { fitBoys } from "../src/fit/fit-boys.ts";
import { fitCorrelation } from "../src/fit/fit-correlation.ts";
import { fitSmoothCurves } from "../src/fit/fit-smooth-curves.ts";

// The same invented children, fitted here and by other software: see independent/README.md.
const basis: SplineBasis = { low: Math.log(45), high: Math.log(205), intervals: 20 };
const curveNames = ["mean", "boys", "correlation", "logMedian", "logSigma", "lambda"] as const;
type CurveName = (typeof curveNames)[number];

interface Fitted {
  readonly lengthsCm: readonly number[];
  readonly curves: Record<
    CurveName,
    { readonly value: readonly number[]; readonly standardError: readonly number[] }
  >;
}

function read(name: string): string {
  return readFileSync(new URL(`../independent/${name}`, import.meta.url), "utf8");
}

const byPython: Fitted = JSON.parse(read("curves-python.json"));
const byR: Fitted = JSON.parse(read("curves-r.json"));

describe("the curves of 2,000 invented children", () => {
  const ours = new Map<CurveName, readonly number[]>();

  beforeAll(() => {
    const rows = read("simulated.csv")
      .trim()
      .split("\n")
      .slice(1)
      .map((line) => line.split(",").map(Number));
    const column = (i: number): Float64Array => Float64Array.from(rows, (row) => row[i] as number);
    const x = column(0).map(Math.log);
    const y = column(1);
    const logY = y.map(Math.log);
    const mean = fitSmoothCurves({
      basis,
      x,
      start: [1],
      order: [2],
      likelihood: (row, [predictor = 0], into) => {
        const residual = (logY[row] as number) - predictor;
        into.score[0] = residual / 0.15 ** 2;
        into.information[0] = 1 / 0.15 ** 2;
        return -(residual ** 2) / (2 * 0.15 ** 2);
      },
    });
    const boys = fitBoys({ basis, x, boy: rows.map((row) => row[2] === 1) });
    const correlation = fitCorrelation({ basis, x, first: column(3), second: column(4) });
    const [logMedian, logSigma, lambda] = fitBoxCoxCurves({ basis, x, y }).coefficients;
    const all = [mean.coefficients[0], boys, correlation.coefficients[0], logMedian, logSigma, lambda];
    curveNames.forEach((name, i) => {
      const coefficients = all[i] as readonly number[];
      ours.set(
        name,
        byPython.lengthsCm.map((lengthCm) => splineValue(basis, coefficients, Math.log(lengthCm))),
      );
    });
  });

  /** Differences from another fit in standard errors, the unit in which they could matter. */
  function differences(name: CurveName, theirs: Fitted): readonly number[] {
    return theirs.curves[name].value.map(
      (value, i) =>
        Math.abs((ours.get(name)?.[i] as number) - value) /
        (byPython.curves[name].standardError[i] as number),
    );
  }

  // Same statistical model, another way through it: the two may part by where each stops looking for the smoothness, and
  // by observed against expected information. Both are far below the 1 standard error that chance alone allows.
  it.each(curveNames)("%s: within 0.02 standard errors of a direct maximisation in Python", (name) => {
    expect(Math.max(...differences(name, byPython))).toBeLessThan(0.02);
  });

  // mgcv has the same basis and penalty and finds the smoothness by its own Newton steps.
  it.each(["mean", "boys"] as const)("%s: within 0.02 standard errors of R's mgcv", (name) => {
    expect(Math.max(...differences(name, byR))).toBeLessThan(0.02);
  });

  // VGAM smooths with cubic smoothing splines of a freedom given by hand, which lean towards a straight line where ours
  // lean towards a constant; so the curves part where the data say least, power most of all, at the ends.
  it.each([
    { name: "logMedian", standardErrors: 0.3 },
    { name: "logSigma", standardErrors: 0.4 },
    { name: "lambda", standardErrors: 1.1 },
  ] as const)("$name: within $standardErrors standard errors of R's VGAM", ({ name, standardErrors }) => {
    expect(Math.max(...differences(name, byR))).toBeLessThan(standardErrors);
  });

  it("are not so alike that any curve would pass: each lies beyond 5 standard errors from its own mean", () => {
    for (const name of curveNames.filter((curve) => curve !== "lambda")) {
      const { value, standardError } = byPython.curves[name];
      const mean = value.reduce((sum, v) => sum + v, 0) / value.length;
      expect(
        Math.max(...value.map((v, i) => Math.abs(v - mean) / (standardError[i] as number))),
      ).toBeGreaterThan(5);
    }
  });
});
