import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gunzipSync } from "node:zlib";
import { createBodyModel, referenceSite } from "@steelyard/core/body";
import { centimetres, millimetres } from "@steelyard/core/units";
import { beforeAll, describe, expect, it, vi } from "vitest";
import sources from "../../docs/sources.json" with { type: "json" };
import { measureAccuracy } from "../src/accuracy.ts";
import { writeAccuracy } from "../src/accuracy-page/write-accuracy.ts";
import { crossValidate } from "../src/fit/cross-validate.ts";
import { fitAndHoldOut, type HeldOutFit } from "../src/fit/fit-and-hold-out.ts";
import type { FitChild } from "../src/fit/fit-child.ts";
import { type FitTexts, runFit } from "../src/fit/run-fit.ts";
import { type JudgedRow, judge } from "../src/judge.ts";

// Real cross-validation, watched: the models of the one run are used again for the figures below.
vi.mock(import("../src/fit/cross-validate.ts"), { spy: true });
vi.mock(import("../src/fit/fit-and-hold-out.ts"), { spy: true });

const folder = process.env.STEELYARD_DATA;
const notice = folder ? "" : " (skipped: STEELYARD_DATA is not set)";
const committed = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");

interface Row {
  readonly lengthCm: number;
  /** (estimate - true) / true, %. */
  readonly error: number;
  readonly covered: boolean;
}

describe.skipIf(folder === undefined)(`the fit that ships${notice}`, () => {
  let texts: FitTexts;
  let fit: HeldOutFit;
  let children = 0;
  let judged: readonly JudgedRow<FitChild>[] = [];
  const rows: Row[] = [];

  beforeAll(() => {
    texts = runFit({
      nhanesFolder: folder ?? "",
      surveyCsv: gunzipSync(readFileSync(join(folder ?? "", "surveys_children.csv.gz"))).toString(),
      tell: () => {},
    });
    const { calls, results } = vi.mocked(crossValidate).mock;
    const [[call], [result]] = [calls, results];
    if (call === undefined || result?.type !== "return" || calls.length > 1) {
      throw new Error(`The fit cross-validated ${calls.length} times`);
    }
    const [fitted] = vi.mocked(fitAndHoldOut).mock.results;
    if (fitted?.type !== "return") throw new Error("The fit did not return");
    fit = fitted.value;
    const nhanes = call[0].filter(({ source, armMm }) => source === "NHANES" && armMm !== undefined);
    children = nhanes.length;
    judged = judge({
      children: nhanes,
      measure: ({ lengthCm, armMm = 0 }) => ({ lengthCm: centimetres(lengthCm), armMm: millimetres(armMm) }),
      modelFor: result.value,
      site: referenceSite,
    }).rows;
    for (const { child, estimateKg, low95Kg, high95Kg } of judged) {
      const { weightKg, lengthCm } = child;
      rows.push({
        lengthCm,
        error: (100 * estimateKg) / weightKg - 100,
        covered: low95Kg <= weightKg && weightKg <= high95Kg,
      });
    }
    // About a minute on an idle machine.
  }, 600_000);

  it("makes the committed coefficients and logs again, byte for byte", () => {
    expect(texts.byLengthJson === committed("packages/core/src/body/reference/by-length.json")).toBe(true);
    expect(texts.byAgeJson === committed("packages/core/src/body/reference/by-age.json")).toBe(true);
    expect(texts.fitLog).toBe(committed("reference/fit-log.md"));
    expect(texts.surveyLog).toBe(committed("reference/surveys-log.md"));
  });

  it("makes the committed accuracy page and figures again, byte for byte", () => {
    const written = writeAccuracy({ fit, model: createBodyModel(fit.references), sources });
    for (const [path, text] of written) expect(text, path).toBe(committed(`docs/${path}`));
    // Half a minute on an idle machine.
  }, 300_000);

  const percent = (own: readonly Row[], holds: (row: Row) => boolean): number =>
    (100 * own.filter(holds).length) / own.length;
  const mean = (own: readonly Row[]): number => own.reduce((sum, { error }) => sum + error, 0) / own.length;

  // The gates of the first release, cross-validated, sex unknown: length and arm, from 2 months to under 18 years.
  it("estimates nearly every child, and within 10 % and 20 % as often as it must", () => {
    expect(children).toBeGreaterThan(39_000);
    expect(rows.length).toBeGreaterThan(0.9995 * children);
    // A hair over a limit is rounding, not an error: weights are published to 0.1 kg.
    expect(percent(rows, ({ error }) => Math.abs(error) <= 10 + 1e-9)).toBeGreaterThanOrEqual(91.5);
    expect(percent(rows, ({ error }) => Math.abs(error) <= 20 + 1e-9)).toBeGreaterThanOrEqual(99.5);
  });

  it("is summed up by measureAccuracy() as it is here", () => {
    const accuracy = measureAccuracy(judged);
    expect(accuracy.children).toBe(rows.length);
    expect(accuracy.pw10).toBeCloseTo(
      percent(rows, ({ error }) => Math.abs(error) <= 10 + 1e-9),
      10,
    );
    expect(accuracy.pw20).toBeCloseTo(
      percent(rows, ({ error }) => Math.abs(error) <= 20 + 1e-9),
      10,
    );
    expect(accuracy.coverage).toBeCloseTo(
      percent(rows, ({ covered }) => covered),
      10,
    );
    expect(accuracy.meanError).toBeCloseTo(mean(rows), 9);
  });

  it("has no bias overall", () => {
    expect(Math.abs(mean(rows))).toBeLessThanOrEqual(0.3);
  });

  const bands = Array.from({ length: 10 }, (_, i) => ({ low: 50 + 15 * i, high: 65 + 15 * i }));
  const inBand = ({ low, high }: { low: number; high: number }): readonly Row[] =>
    rows.filter(({ lengthCm }) => lengthCm >= low && lengthCm < high);

  it.each(bands)("has a mean error of at most 1 % from $low to $high cm", (band) => {
    expect(inBand(band).length).toBeGreaterThan(200);
    expect(Math.abs(mean(inBand(band)))).toBeLessThanOrEqual(1);
  });

  it.each(bands.slice(1))("covers 94 to 96 % with its 95 % interval from $low to $high cm", (band) => {
    const coverage = percent(inBand(band), ({ covered }) => covered);
    expect(coverage).toBeGreaterThanOrEqual(94);
    expect(coverage).toBeLessThanOrEqual(96);
  });
});
