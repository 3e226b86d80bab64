import type { MeasurementName, Measurements } from "@steelyard/core/body";
import { centimetres, kilograms, millimetres, months } from "@steelyard/core/units";
import type { FitChild } from "../fit/fit-child.ts";
import type { SurveyChild } from "../surveys/read-surveys.ts";

/** A real child as published, and the half of the data it is in. */
export interface CleanRow {
  readonly source: string;
  readonly measurements: Measurements;
  readonly half: "tuned" | "judged";
}

/** How much is known of a child: all its row holds, the same without the weight, or length and arm alone. */
export type Known = "everything" | "everything but the weight" | "length and arm";

/** The measurements that are known, with those named in `besides`. */
export function knownOf(
  measurements: Measurements,
  known: Known,
  besides: readonly MeasurementName[] = [],
): Measurements {
  return Object.fromEntries(
    Object.entries(measurements).filter(([key]) => {
      const name = key as MeasurementName;
      if (known === "everything" || besides.includes(name)) return true;
      return known === "length and arm" ? name === "lengthCm" || name === "armMm" : name !== "scaleKg";
    }),
  );
}

/** The surveys whose tapes and scales were read well (see the data's README). */
const cleanDatasets: readonly string[] = ["liberiaData anthroDF (round 2)", "nipnTK dp.ex03"];

/** NHANES children with all that was measured, the weight as from a scale; every other one of them judges. */
export function nhanesRows(children: readonly FitChild[]): readonly CleanRow[] {
  return children.filter(({ source }) => source === "NHANES").map((child, i) => row("NHANES", child, i));
}

/** Children of the clean surveys; ages before birth are no ages. */
export function surveyRows(children: readonly SurveyChild[]): readonly CleanRow[] {
  return cleanDatasets.flatMap((dataset) =>
    children.filter((child) => child.dataset === dataset).map((child, i) => row(dataset, child, i)),
  );
}

/** What children of either kind of source have. */
type Child = Pick<FitChild, "lengthCm" | "weightKg"> &
  Partial<Omit<FitChild, "source" | "childId" | "weight">>;

function row(source: string, child: Child, i: number): CleanRow {
  const { sex, ageMonths = -1, armMm, waistCm, thighCm, calfCm, headCm } = child;
  return {
    source,
    half: i % 2 === 0 ? "tuned" : "judged",
    measurements: {
      lengthCm: centimetres(child.lengthCm),
      scaleKg: kilograms(child.weightKg),
      ...(armMm === undefined ? {} : { armMm: millimetres(armMm) }),
      ...(sex === undefined ? {} : { sex }),
      ...(ageMonths < 0 ? {} : { ageMonths: months(ageMonths) }),
      ...(waistCm === undefined ? {} : { waistCm: centimetres(waistCm) }),
      ...(thighCm === undefined ? {} : { thighCm: centimetres(thighCm) }),
      ...(calfCm === undefined ? {} : { calfCm: centimetres(calfCm) }),
      ...(headCm === undefined ? {} : { headCm: centimetres(headCm) }),
    },
  };
}
