import { type BodyModel, referenceSite, uncalibratedSite } from "@steelyard/core/body";
import { type PlainFormula, plainFormulas } from "@steelyard/study/formulas";
import type { Judged, Weighed } from "../accuracy.ts";
import type { HeldOutFit } from "../fit/fit-and-hold-out.ts";
import type { FitChild } from "../fit/fit-child.ts";
import { judgeMeasureSets } from "../fit/judge-measure-sets.ts";
import { type MeasuredChild, measureSet } from "../fit/measure-sets.ts";
import { withFieldError } from "../fit/with-field-error.ts";
import { type JudgedRow, judge } from "../judge.ts";
import { type CalibrationDraws, calibrationDraws } from "../surveys/calibration-draws.ts";
import { type SurveyChild, weighedChildren } from "../surveys/read-surveys.ts";
import { type Placed, placeChildren, type Way } from "./regression-to-the-mean.ts";

/** A plain formula and the model on the same children. */
export interface FormulaAccuracy {
  readonly formula: PlainFormula;
  readonly rows: readonly Weighed[];
  readonly model: readonly Judged[];
}

/** One open survey, judged by a fit that has not seen it. */
export interface SurveyAccuracy {
  readonly dataset: string;
  readonly country: string;
  readonly sets: readonly (readonly [name: string, rows: readonly Judged[]])[];
  readonly formulas: readonly FormulaAccuracy[];
  /** By 100 of its own children; absent where there are too few. */
  readonly calibrated?: CalibrationDraws;
}

/** Everything the accuracy page and its figures show. */
export interface AccuracyResults {
  readonly model: BodyModel;
  readonly nhanes: ReadonlyMap<string, readonly JudgedRow<FitChild>[]>;
  /** Length + arm, with the errors of hurried hands added. */
  readonly withFieldError: readonly Judged[];
  readonly formulas: readonly FormulaAccuracy[];
  readonly surveys: readonly SurveyAccuracy[];
  readonly placed: readonly {
    readonly name: string;
    readonly ways: Readonly<Record<Way, readonly Placed[]>>;
  }[];
}

const formulaSet = "length + arm + sex";
const surveySets = ["age", "age + arm", "length", "length + arm", formulaSet, "length + arm + sex + age"];
const calibrationSize = 100;
/** The surveys whose arms are measured about as well as those of NHANES. */
const cleanSurveys = ["liberiaData anthroDF (round 2)", "nipnTK dp.ex03"];

/** Judges every child of a fit by models that have not seen it. Needs the surveys. */
export function computeAccuracy(fit: HeldOutFit, model: BodyModel): AccuracyResults {
  if (fit.surveys === undefined) throw new Error("Cannot compute the accuracy page without the surveys");
  const { survey, modelFor } = fit.surveys;
  const children = weighedChildren(survey);
  const drawn = calibrationDraws({ children, modelFor });
  const nhanes = new Map([...judgeMeasureSets(fit)].map(([name, { rows }]) => [name, rows] as const));
  const clean = children.filter(({ dataset }) => cleanSurveys.includes(dataset));
  const datasets = [...new Set(children.map(({ dataset }) => dataset))].sort();
  return {
    model,
    nhanes,
    withFieldError: withFieldError({ children: fit.selection.children, modelFor: fit.heldOut }),
    formulas: compareFormulas(nhanes.get(formulaSet) ?? []),
    surveys: datasets.map((dataset) => {
      const own = children.filter((child) => child.dataset === dataset);
      const calibrated = drawn.find((draw) => draw.dataset === dataset && draw.size === calibrationSize);
      return {
        ...judgeSurvey({ children: own, modelFor }),
        dataset,
        ...(calibrated === undefined ? {} : { calibrated }),
      };
    }),
    placed: [
      {
        name: "NHANES, 2 months and older, to 120 cm",
        ways: placeChildren({
          children: fit.selection.children,
          modelFor: fit.heldOut,
          site: referenceSite,
        }),
      },
      {
        name: "Liberia and West Africa, 6 to 59 months",
        ways: placeChildren({ children: clean, modelFor, site: uncalibratedSite }),
      },
    ],
  };
}

function judgeSurvey(given: {
  children: readonly SurveyChild[];
  modelFor: (child: SurveyChild) => BodyModel;
}): Omit<SurveyAccuracy, "dataset"> {
  const sets = surveySets.flatMap((name) => {
    const { rows } = judge({ ...given, measure: measureSet(name).measure, site: uncalibratedSite });
    return rows.length === 0 ? [] : [[name, rows] as const];
  });
  const best = new Map<string, readonly JudgedRow<SurveyChild>[]>(sets);
  return {
    country: given.children[0]?.country ?? "",
    sets,
    formulas: compareFormulas(best.get(formulaSet) ?? best.get("length + arm") ?? []),
  };
}

/** Every formula on the children it applies to, beside the model on the same children. */
function compareFormulas<T extends MeasuredChild>(rows: readonly JudgedRow<T>[]): readonly FormulaAccuracy[] {
  return plainFormulas.flatMap((formula) => {
    const both = rows.flatMap((row) => {
      const estimateKg = formula.estimateKg(row.child);
      return estimateKg === undefined ? [] : [{ row, estimateKg }];
    });
    if (both.length === 0) return [];
    return [
      {
        formula,
        rows: both.map(({ row, estimateKg }) => ({ estimateKg, trueKg: row.trueKg })),
        model: both.map(({ row }) => row),
      },
    ];
  });
}
