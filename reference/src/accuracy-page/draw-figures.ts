import type { AccuracyResults } from "./compute-accuracy.ts";
import { drawCoverageByLength } from "./figures/coverage-by-length.ts";
import { drawErrorByLength } from "./figures/error-by-length.ts";
import { drawRegressionToTheMean } from "./figures/regression-to-the-mean.ts";
import { drawSurveys } from "./figures/surveys.ts";
import { drawWeightByArm } from "./figures/weight-by-arm.ts";
import { drawWithinByLength } from "./figures/within-by-length.ts";

/** The figures of the accuracy page: SVG text by file name. */
export function drawFigures(results: AccuracyResults): ReadonlyMap<string, string> {
  return new Map([
    ["within-by-length.svg", drawWithinByLength(results)],
    ["error-by-length.svg", drawErrorByLength(results)],
    ["coverage-by-length.svg", drawCoverageByLength(results)],
    ["weight-by-arm.svg", drawWeightByArm(results)],
    ["survey-errors.svg", drawSurveys(results, "meanError")],
    ["survey-within.svg", drawSurveys(results, "pw10")],
    ["regression-to-the-mean.svg", drawRegressionToTheMean(results)],
  ]);
}
