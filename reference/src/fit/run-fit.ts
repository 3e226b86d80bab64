import { writeSurveyLog } from "../surveys/write-survey-log.ts";
import { type FitRun, fitAndHoldOut } from "./fit-and-hold-out.ts";
import { formatReference } from "./format-reference.ts";
import { writeLog } from "./write-log.ts";

/** The texts a fit writes. */
export interface FitTexts {
  readonly byLengthJson: string;
  readonly byAgeJson: string;
  readonly fitLog: string;
  readonly surveyLog?: string;
}

/** Reads, selects, fits, cross-validates and logs: everything `npm run fit` does but the writing. */
export function runFit(run: FitRun): FitTexts {
  const fit = fitAndHoldOut(run);
  const { references, surveys } = fit;
  const texts = {
    byLengthJson: formatReference(references.byLength),
    byAgeJson: formatReference(references.byAge),
    fitLog: writeLog(fit),
  };
  if (surveys === undefined) return texts;
  run.tell("Measuring the open surveys");
  return { ...texts, surveyLog: writeSurveyLog({ ...surveys, version: references.byLength.version }) };
}
