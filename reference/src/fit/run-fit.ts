import { createBodyModel } from "@steelyard/core/body";
import { loadNhanes } from "../nhanes/load-nhanes.ts";
import { readSurveys } from "../surveys/read-surveys.ts";
import { writeSurveyLog } from "../surveys/write-survey-log.ts";
import { crossValidate } from "./cross-validate.ts";
import { fitBodyModels } from "./fit-body-models.ts";
import { formatReference } from "./format-reference.ts";
import { lowBirthWeightInfants } from "./low-birth-weight-infants.ts";
import { publishedInfants } from "./published-infants.ts";
import { selectChildren } from "./select-children.ts";
import { writeLog } from "./write-log.ts";

/** Version of the coefficients: raise it whenever a fit that ships changes. */
const version = "2";

export interface FitRun {
  readonly nhanesFolder: string;
  /** Text of the tidy survey file. Without it there are no low-birth-weight infants in the fit, and no survey log. */
  readonly surveyCsv?: string;
  /** Called with one line at each step. */
  readonly tell: (line: string) => void;
}

/** The texts a fit writes. */
export interface FitTexts {
  readonly byLengthJson: string;
  readonly byAgeJson: string;
  readonly fitLog: string;
  readonly surveyLog?: string;
}

/** Reads, selects, fits, cross-validates and logs: everything `npm run fit` does but the writing. */
export function runFit({ nhanesFolder, surveyCsv, tell }: FitRun): FitTexts {
  const load = loadNhanes(nhanesFolder);
  tell(`${load.children.length} children in ${load.files.length} files`);
  const selection = selectChildren(load.children);
  for (const [reason, n] of selection.dropped) tell(`  dropped ${n}: ${reason}`);
  const survey = surveyCsv === undefined ? undefined : readSurveys(surveyCsv);
  const infants = survey === undefined ? [] : lowBirthWeightInfants(survey.children);
  const children = [...selection.children, ...infants, ...publishedInfants()];
  tell(`${selection.children.length} to fit, with ${infants.length} visits of infants of low birth weight`);
  const options = {
    version: infants.length === 0 ? `${version} (NHANES alone)` : version,
    sourceIds: ["nhanes", "who-growth-2006", ...(infants.length === 0 ? [] : ["nutrition-surveys"])],
  };
  const references = fitBodyModels(children, options);
  tell("Cross-validating in five folds");
  const heldOut = crossValidate(children, options);
  const texts = {
    byLengthJson: formatReference(references.byLength),
    byAgeJson: formatReference(references.byAge),
    fitLog: writeLog({ load, selection, infants, references, heldOut }),
  };
  if (survey === undefined) return texts;
  tell("Measuring the open surveys");
  const withoutInfants = createBodyModel(
    fitBodyModels([...selection.children, ...publishedInfants()], options),
  );
  const model = createBodyModel(references);
  return { ...texts, surveyLog: writeSurveyLog({ survey, model, withoutInfants }) };
}
