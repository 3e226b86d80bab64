import { type BodyModel, type BodyReference, createBodyModel } from "@steelyard/core/body";
import { loadNhanes, type NhanesLoad } from "../nhanes/load-nhanes.ts";
import { readSurveys, type SurveyChild, type SurveyLoad } from "../surveys/read-surveys.ts";
import { crossValidate } from "./cross-validate.ts";
import { fitBodyModels } from "./fit-body-models.ts";
import type { FitChild } from "./fit-child.ts";
import { lifeDataset, lowBirthWeightInfants } from "./low-birth-weight-infants.ts";
import { publishedInfants } from "./published-infants.ts";
import { type Selection, selectChildren } from "./select-children.ts";

/** Version of the coefficients: raise it whenever a fit that ships changes. */
const version = "2";

export interface FitRun {
  readonly nhanesFolder: string;
  /** Text of the tidy survey file. Without it there are no low-birth-weight infants in the fit, and no surveys to judge it on. */
  readonly surveyCsv?: string;
  /** Called with one line at each step. */
  readonly tell: (line: string) => void;
}

/** The fit that ships, and for every child a fit that has not seen it. */
export interface HeldOutFit {
  readonly load: NhanesLoad;
  readonly selection: Selection;
  /** Visits of the low-birth-weight infants that joined the fit. */
  readonly infants: readonly FitChild[];
  readonly references: { readonly byLength: BodyReference; readonly byAge: BodyReference };
  /** The fit without the child's own fold. */
  readonly heldOut: (child: FitChild) => BodyModel;
  readonly surveys?: HeldOutSurveys;
}

/** The open surveys, and for each child a fit that has not seen its survey. */
interface HeldOutSurveys {
  readonly survey: SurveyLoad;
  readonly modelFor: (child: SurveyChild) => BodyModel;
}

/** Reads, selects, fits and cross-validates. */
export function fitAndHoldOut({ nhanesFolder, surveyCsv, tell }: FitRun): HeldOutFit {
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
  const fit = { load, selection, infants, references, heldOut };
  if (survey === undefined) return fit;
  tell("Fitting without the infants of low birth weight");
  const withoutInfants = createBodyModel(
    fitBodyModels([...selection.children, ...publishedInfants()], options),
  );
  const model = createBodyModel(references);
  const modelFor = ({ dataset }: SurveyChild): BodyModel =>
    dataset === lifeDataset ? withoutInfants : model;
  return { ...fit, surveys: { survey, modelFor } };
}
