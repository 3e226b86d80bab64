import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gunzipSync } from "node:zlib";
import { selectChildren } from "../fit/select-children.ts";
import { loadNhanes } from "../nhanes/load-nhanes.ts";
import { readSurveys } from "../surveys/read-surveys.ts";
import { type CleanRow, nhanesRows, surveyRows } from "./clean-row.ts";

/** The clean rows of the data folder: NHANES and the surveys that were measured well. */
export function loadCleanRows(folder: string): readonly CleanRow[] {
  const surveys = gunzipSync(readFileSync(join(folder, "surveys_children.csv.gz"))).toString();
  return [
    ...nhanesRows(selectChildren(loadNhanes(folder).children).children),
    ...surveyRows(readSurveys(surveys).children),
  ];
}
