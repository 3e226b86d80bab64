import type { SurveyChild } from "../surveys/read-surveys.ts";
import type { FitChild } from "./fit-child.ts";

export const lifeDataset = "gigs life6mo";

/**
 * A child of the LIFE study was measured some seven times in eight months, and its visits tell much the same: with a correlation of 0.14
 * between them seven count as 3.8, so each counts 0.54 (the design effect of repeated measures).
 */
const weight = 0.54;

/**
 * The infants of the LIFE study, many of low birth weight: the only children of the fit under 55 cm.
 *
 * @source nutrition-surveys
 */
export function lowBirthWeightInfants(surveyChildren: readonly SurveyChild[]): readonly FitChild[] {
  return surveyChildren.flatMap(
    ({ dataset, childId, sex, lengthCm, weightKg, armMm, ageMonths }): FitChild[] => {
      if (dataset !== lifeDataset || sex === undefined) return [];
      return [
        {
          source: dataset,
          childId: Number(childId),
          sex,
          lengthCm,
          weightKg,
          armMm,
          weight,
          ...(ageMonths === undefined ? {} : { ageMonths }),
        },
      ];
    },
  );
}
