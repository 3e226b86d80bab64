import { createBodyModel } from "@steelyard/core/body";
import { loadNhanes } from "../nhanes/load-nhanes.ts";
import { readSurveys } from "../surveys/read-surveys.ts";
import { writeSurveyLog } from "../surveys/write-survey-log.ts";
import { crossValidate } from "./cross-validate.ts";
import { fitBodyModel } from "./fit-body-model.ts";
import { formatReference } from "./format-reference.ts";
import { selectChildren } from "./select-children.ts";
import { writeLog } from "./write-log.ts";

/** Version of the coefficients: raise it whenever a fit that ships changes. */
const version = "nhanes 1";

export interface FitRun {
  readonly nhanesFolder: string;
  /** Text of the tidy survey file. */
  readonly surveyCsv?: string;
  /** Called with one line at each step. */
  readonly tell: (line: string) => void;
}

/** The texts a fit writes. */
export interface FitTexts {
  readonly referenceJson: string;
  readonly fitLog: string;
  readonly surveyLog?: string;
}

/** Reads, selects, fits, cross-validates and logs: everything `npm run fit` does but the writing. */
export function runFit({ nhanesFolder, surveyCsv, tell }: FitRun): FitTexts {
  const load = loadNhanes(nhanesFolder);
  tell(`${load.children.length} children in ${load.files.length} files`);
  const selection = selectChildren(load.children);
  for (const [reason, n] of selection.dropped) tell(`  dropped ${n}: ${reason}`);
  tell(`${selection.children.length} to fit`);
  const reference = fitBodyModel(selection.children, { version });
  tell("Cross-validating in five folds");
  const heldOut = crossValidate(selection.children, { version });
  const texts = {
    referenceJson: formatReference(reference),
    fitLog: writeLog({ load, selection, reference, heldOut }),
  };
  if (surveyCsv === undefined) return texts;
  tell("Measuring the open surveys");
  const survey = readSurveys(surveyCsv);
  return { ...texts, surveyLog: writeSurveyLog({ survey, model: createBodyModel(reference) }) };
}
