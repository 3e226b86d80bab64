// The body model beside plain published formulas on every open survey: which file holds which, how it is read, and what each method does.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gunzipSync } from "node:zlib";
import { analyseStudy, type MethodAccuracy } from "@steelyard/study/analysis";
import { plainFormulas } from "@steelyard/study/formulas";
import { type ImportedStudy, importStudy, type MappingChange, openStudyFile } from "@steelyard/study/import";
import { type Method, methodId } from "@steelyard/study/methods";
import { ENGLISH_REPORT } from "@steelyard/study/report";
import { selectRows, wordAt } from "@steelyard/study/table";
import { readTransport } from "@steelyard/study/transport";

/** Strata of fewer children say nothing. */
export const FEWEST = 100;
const methods: readonly Method[] = [
  { type: "body", inputs: ["lengthCm"] },
  { type: "body", inputs: ["lengthCm", "armMm"] },
  { type: "body", inputs: ["lengthCm", "armMm", "sex"] },
  ...plainFormulas
    .filter(({ gives }) => gives === "total")
    .map(({ sourceId }): Method => ({ type: "formula", sourceId })),
];
/** A file of children; `with` names the one that holds their ages, joined by the child's number. */
export interface SurveyFile {
  readonly name: string;
  readonly with?: string;
  readonly by: string;
  readonly changes: readonly MappingChange[];
}

const field = (
  column: string,
  own: "lengthCm" | "standingHeightCm" | "armMm",
  unit: "cm" | "mm",
): MappingChange => ({ column, role: { type: "field", field: own }, unit });
/** Every open file with children, the column that tells its surveys apart, and what the names of its columns do not say. */
export const surveyFiles: readonly SurveyFile[] = [
  {
    name: "surveys_children.csv.gz",
    by: "dataset",
    changes: [
      { column: "dataset", role: { type: "group" } },
      { column: "source", role: { type: "left" } },
      { column: "country", role: { type: "left" } },
    ] as MappingChange[],
  },
  {
    name: "nhanes_children.csv.gz",
    by: "cycle",
    changes: [
      field("recumbent_length_cm", "lengthCm", "cm"),
      field("standing_height_cm", "standingHeightCm", "cm"),
      field("mac_cm", "armMm", "cm"),
      { column: "cycle", role: { type: "group" } },
    ] as MappingChange[],
  },
  ...(["C", "D", "I"] as const).map(
    (letter): SurveyFile => ({
      name: `raw/nhanes/xpt/BMX_${letter}.XPT.gz`,
      with: `raw/nhanes/xpt/DEMO_${letter}.XPT.gz`,
      by: "cycle",
      changes: [],
    }),
  ),
];

/** A survey file read as `steelyard study` would read it. */
export async function openSurvey(
  folder: string,
  { name, with: ages, changes }: SurveyFile,
): Promise<ImportedStudy> {
  const unpacked = (file: string): Uint8Array => gunzipSync(readFileSync(join(folder, file)));
  const bytes = ages === undefined ? unpacked(name) : joinTransport(name, unpacked(name), unpacked(ages));
  const opened = await openStudyFile(bytes);
  const study = opened.ok ? importStudy(opened.value, { changes: [...changes] }) : opened;
  if (!study.ok) throw new Error(`${name}: ${ENGLISH_REPORT.issue(study.error)}`);
  return study.value;
}

/** One survey of a file, and every method on it that serves enough children. */
export function judgeSurvey(
  { table, fates }: ImportedStudy,
  { by, group }: { readonly by: string; readonly group: string },
): readonly JudgedMethod[] {
  const groups = table.words.get(by);
  const children = selectRows(table, (row) => fates[row] === 0 && wordAt(groups, row) === group);
  return analyseStudy(children, { methods }).methods.flatMap(({ overall, coverage, estimates }) =>
    overall === undefined || overall.n < FEWEST ? [] : [{ overall, coverage, method: estimates.method }],
  );
}

export interface JudgedMethod {
  readonly method: Method;
  readonly overall: NonNullable<MethodAccuracy["overall"]>;
  readonly coverage: MethodAccuracy["coverage"];
}

export const evidenceColumns =
  "survey,method,children,mean_error_percent,sd_percent,pw10,pw10_low,pw10_high,pw20,pw20_low,pw20_high,coverage95";

/** A method on a survey as a line of accuracy.csv. */
export function evidenceLine(group: string, { overall, coverage, method }: JudgedMethod): string {
  const { within10, within20 } = overall;
  return [
    `"${group}"`,
    methodId(method),
    overall.n,
    overall.meanPercent,
    overall.sdPercent,
    ...[within10.share, within10.low, within10.high],
    ...[within20.share, within20.low, within20.high],
    coverage?.share ?? "",
  ].join(",");
}

/** Body measures and ages of a cycle, SAS transport files as the CDC gives them, joined by the child's number: those under 20 years as CSV. */
function joinTransport(name: string, measures: Uint8Array, people: Uint8Array): Uint8Array {
  const [body, demo] = [readTransport(measures), readTransport(people)];
  if (!body.ok || !demo.ok) throw new Error(`${name}: no SAS transport file`);
  const column = (file: typeof body.value, own: string): ArrayLike<number | string | null> =>
    (file.columns.get(own) ?? []) as ArrayLike<number | string | null>;
  const seqn = column(demo.value, "SEQN");
  const rowOf = new Map(Array.from({ length: demo.value.rows }, (_, row) => [seqn[row], row]));
  // Completed months at the exam: one name to 2010, another from 2011 on.
  const months = demo.value.columns.has("RIDAGEEX") ? "RIDAGEEX" : "RIDEXAGM";
  const kept = ["SEQN", "BMXWT", "BMXRECUM", "BMXHT", "BMXARMC"].map(
    (own) => [own, column(body.value, own)] as const,
  );
  const cycle = name.replace(/^.*BMX_(.).*$/, "BMX_$1.XPT");
  const lines = [[...kept.map(([own]) => own), "RIAGENDR", months, "cycle"].join(",")];
  for (let row = 0; row < body.value.rows; row++) {
    const person = rowOf.get(column(body.value, "SEQN")[row]);
    const age = person === undefined ? undefined : column(demo.value, months)[person];
    if (person === undefined || typeof age !== "number" || !(age < 240)) continue;
    const cells = kept.map(([, values]) => values[row] ?? "").map((cell) => (Number.isNaN(cell) ? "" : cell));
    lines.push([...cells, column(demo.value, "RIAGENDR")[person], age, cycle].join(","));
  }
  return new TextEncoder().encode(`${lines.join("\n")}\n`);
}
