import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { basename } from "node:path";
import { defaultBodyModel } from "@steelyard/core/body";
import { cautionBlock } from "@steelyard/core/wording";
import { analyseStudy, MADE_STRATA } from "@steelyard/study/analysis";
import { inventStudy } from "@steelyard/study/example";
import { examineStudy } from "@steelyard/study/findings";
import { type ImportedStudy, type ImportIssue, importStudy, openStudyFile } from "@steelyard/study/import";
import { type BodyInput, type Method, methodId, readMethod } from "@steelyard/study/methods";
import { summariseSite } from "@steelyard/study/pooling";
import { assessQuality } from "@steelyard/study/quality";
import { composeReport, ENGLISH_REPORT, reportFiles } from "@steelyard/study/report";
import { selectRows } from "@steelyard/study/table";
import { type Command, Option } from "commander";
import { isCalendarDate, today } from "../calibrate/calendar-date.ts";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { fileFailure } from "../file-failure.ts";
import { loadFormulary } from "../formulary/load-formulary.ts";
import { EXIT_STATUS_HELP, helpCautions } from "../help-text.ts";
import { loadTypefaces } from "../paper/load-typefaces.ts";
import { SOFTWARE_VERSION } from "../software-version.ts";
import { wrap } from "../wrap.ts";
import { createAgreementCommand } from "./agreement-command.ts";
import { drawPictures } from "./draw-pictures.ts";
import { describeQuality, describeStudy, formatAccuracy } from "./format-study.ts";
import { createPoolCommand } from "./pool-command.ts";
import { readMap } from "./read-map.ts";
import { createSampleSizeCommand } from "./sample-size-command.ts";
import { writeFiles } from "./write-files.ts";

const HELP = `
The file is a CSV or TSV text of any encoding, an .xlsx workbook or a SAS
transport file. It holds a scale weight and a length, a height or an age; columns
are matched by name, else by looks, and their units by name, else by their
numbers. What was matched by looks only must be confirmed with --map.

Methods: a column of estimates by its name; body:length+arm (of length, arm,
waist, thigh, calf, head, sex, age, build, carer); formula:luscombe2007. When
none is given: every column of estimates, and the body model.

--compare says which of them are compared, and with which: all others with the
first. Whether a method is not worse than that one is judged by --margin, which
is chosen before the data are seen.

--formulary draft, or a file, tells how often the errors would have moved a dose
outside its accepted range; without it no dose is computed.

The folder gets report.html, report.pdf, a CSV of every table, and every figure
as SVG and PNG. The same file, options, date and seed give the same bytes.

Examples:
  steelyard study rows.csv -o report
  steelyard study rows.xlsx --methods body:length+arm formula:luscombe2007 \\
    --by length site -o report
  steelyard study rows.csv --compare nurse_kg body:length+arm --margin 5 \\
    --clusters site --seed 7 --formulary draft -o report
  steelyard study survey.csv --map "v3=weightKg:kg" --map "v4=armMm:mm|cm" -o report

${EXIT_STATUS_HELP}`;

interface StudyOptions {
  readonly output?: string;
  readonly methods?: readonly string[];
  readonly by: readonly string[];
  readonly map: readonly string[];
  readonly sheet?: string;
  readonly title?: string;
  readonly date?: string;
  readonly siteName: string;
  readonly compare?: readonly string[];
  readonly margin?: string;
  readonly adjust: "holm" | "benjamini-hochberg";
  readonly clusters?: string;
  readonly seed: string;
  readonly replicates: string;
  readonly formulary?: string;
}

/** In place of a file: 400 invented children. */
const EXAMPLE = "example";

const collect = (value: string, before: readonly string[]): readonly string[] => [...before, value];

/** `steelyard study rows.csv -o report`. */
export function defineStudyCommand(command: Command): void {
  command
    .argument("<file>", 'the file of children with a scale weight; "example" is one of 400 invented children')
    .option("-o, --output <folder>", "the folder for the report (required)")
    .option("--methods <method...>", "what is judged (see below)")
    .option("--by <column...>", "groups to tell apart: length, age, weight-for-length, or a column", [
      "length",
      "age",
      "sex",
    ])
    .option("--map <column=field:unit>", "what a column is and its unit; repeatable", collect, [])
    .option("--compare <method...>", "methods to compare, the first with each of the others")
    .option("--margin <points>", "points of children within 10 % by which one may be worse than the first")
    .addOption(
      new Option("--adjust <way>", "how p values are adjusted for several comparisons")
        .choices(["holm", "benjamini-hochberg"])
        .default("holm"),
    )
    .option("--clusters <column>", "column whose words are drawn together, such as site")
    .option("--seed <number>", "of everything drawn by chance", "1")
    .option("--replicates <number>", "how often clusters are drawn", "2000")
    .option("--formulary <file>", 'judge what errors mean for doses; "draft" is the one that ships')
    .option("--sheet <name>", "the sheet of a workbook")
    .option("--title <title>", "the title of the report")
    .option("--date <YYYY-MM-DD>", "the day it is made, in place of today")
    .option("--site-name <name>", "what the site is called in its summary file", "unnamed site")
    .addHelpText("after", () => `${HELP}\n${helpCautions()}`)
    .addCommand(createAgreementCommand())
    .addCommand(createSampleSizeCommand())
    .addCommand(createPoolCommand())
    .action(studyFile);
}

async function studyFile(path: string, options: StudyOptions): Promise<void> {
  const { date: madeOn = today() } = options;
  if (!isCalendarDate(madeOn)) throw wrongUsage(`--date: "${madeOn}" is no day such as 2026-11-25.`);
  const { output } = options;
  if (output === undefined) throw wrongUsage("-o: name the folder for the report, such as -o report.");
  const changes = options.map.map(readMap);
  const bytes = path === EXAMPLE ? new TextEncoder().encode(inventStudy()) : await load(path);
  const show = progress();
  const opened = await openStudyFile(bytes, options.sheet === undefined ? {} : { sheet: options.sheet });
  if (!opened.ok) throw notServed(path, opened.error);
  const study = importStudy(opened.value, { changes, onProgress: (share) => show("reading", share) });
  show.end();
  if (!study.ok) throw notServed(path, study.error);
  refuseUnconfirmed(study.value);
  say(describeStudy(study.value));
  const { table, fates } = study.value;
  const compared = selectRows(table, (row) => fates[row] === 0);
  const numbers = readNumbers(options);
  const formulary =
    options.formulary === undefined ? undefined : (await loadFormulary(options.formulary)).formulary;
  const named = [...new Set([...(options.methods ?? []), ...(options.compare ?? [])])];
  const methods =
    named.length > 0 ? named.map((text) => methodOf(text, study.value)) : usualMethods(study.value);
  const clusters = options.clusters === undefined ? undefined : tableName(options.clusters, study.value);
  if (clusters !== undefined && !compared.words.has(clusters))
    throw wrongUsage(
      `--clusters: there is no ${options.clusters}. There are: ${[...compared.words.keys()].join(", ") || "none"}.`,
    );
  const by = [...new Set(options.by.map((name) => tableName(name, study.value)))];
  const analysis = analyseStudy(compared, {
    methods,
    by,
    onProgress: (share) => show("estimating", share),
  });
  show.end();
  const unknown = analysis.unknownStrata.filter(
    (name) => options.by.length > 3 || !["length", "age", "sex"].includes(name),
  );
  if (unknown.length > 0)
    throw wrongUsage(
      `--by: there is no ${unknown.join(", ")}. There are: ${[...MADE_STRATA, ...study.value.mapping.flatMap(({ column, role }) => (compared.words.has(role.type === "field" ? role.field : column) ? [column] : []))].join(", ")}.`,
    );
  const findings = examineStudy(analysis, {
    seed: numbers.seed,
    replicates: numbers.replicates,
    clusters,
    formulary,
    onProgress: (share) => show("drawing clusters", share),
  });
  show.end();
  const quality = assessQuality(table, { by: ["measurer", "site"] });
  say(describeQuality(quality));
  const typefaces = await loadTypefaces();
  const report = composeReport({
    study: study.value,
    quality,
    analysis,
    findings,
    comparison: {
      reference: options.compare?.[0],
      marginPoints: numbers.margin,
      adjust: options.adjust,
    },
    title: options.title ?? ENGLISH_REPORT.reportTitle(basename(path)),
    fileSha256: createHash("sha256").update(bytes).digest("hex"),
    madeOn,
    software: SOFTWARE_VERSION,
    model: defaultBodyModel().version,
    invented: opened.value.header.some((name) => name.toLowerCase() === "invented"),
    typefaces,
  });
  const summary = summariseSite({
    site: options.siteName,
    trueKg: compared.numbers.get("weightKg") as Float64Array,
    methods: analysis.methods.map(({ estimates }) => ({
      method: methodId(estimates.method),
      estimateKg: estimates.estimateKg,
    })),
  });
  const files = [
    ...(await reportFiles(report, typefaces)),
    ...(await drawPictures(report, typefaces)),
    { name: "site-summary.json", content: `${JSON.stringify(summary, undefined, 2)}\n` },
  ];
  await writeFiles(output, files);
  process.stdout.write(`\n${formatAccuracy(analysis)}\n`);
  const { title, lines } = cautionBlock();
  say([
    `Written to ${output}: report.html, report.pdf and ${files.length - 3} tables and figures, site-summary.json.`,
    `${title}: ${lines.join(" ")}`,
  ]);
}

function readNumbers({ seed, replicates, margin }: StudyOptions): {
  readonly seed: number;
  readonly replicates: number;
  readonly margin: number | undefined;
} {
  const read = (name: string, text: string, from: number, to: number, whole: boolean): number => {
    const value = Number(text);
    if (text.trim() === "" || !(value >= from && value <= to) || (whole && !Number.isInteger(value)))
      throw wrongUsage(`--${name}: "${text}" is no ${whole ? "whole " : ""}number from ${from} to ${to}.`);
    return value;
  };
  return {
    seed: read("seed", seed, 0, 4294967295, true),
    replicates: read("replicates", replicates, 100, 100000, true),
    margin: margin === undefined ? undefined : read("margin", margin, 0.1, 99, false),
  };
}

function load(path: string): Promise<Uint8Array> {
  return readFile(path).catch((error: unknown) => {
    throw fileFailure("read", path, error);
  });
}

/** A column by the name it has in the file or by the field it is taken for. */
function tableName(name: string, { mapping }: ImportedStudy): string {
  const role = mapping.find(({ column }) => column === name)?.role;
  return role?.type === "field" ? role.field : name;
}

/** Every column of estimates, and the body model with more and more of what the file has. */
function usualMethods({ mapping }: ImportedStudy): readonly Method[] {
  const has = (...fields: readonly string[]): boolean =>
    mapping.some(({ role }) => role.type === "field" && fields.includes(role.field));
  const length: readonly BodyInput[] = has("lengthCm", "standingHeightCm", "statureCm")
    ? ["lengthCm"]
    : ["ageMonths"];
  const sets: readonly (readonly BodyInput[])[] = [
    length,
    ...(has("armMm") ? [[...length, "armMm"] as const] : []),
    ...(has("armMm") && has("sex") ? [[...length, "armMm", "sex"] as const] : []),
  ];
  return [
    ...sets.map((inputs): Method => ({ type: "body", inputs })),
    ...mapping.flatMap(({ column, role }): Method[] =>
      role.type === "estimate" ? [{ type: "column", column }] : [],
    ),
  ];
}

function methodOf(text: string, { mapping }: ImportedStudy): Method {
  const columns = mapping.flatMap(({ column, role }) => (role.type === "estimate" ? [column] : []));
  const method = readMethod(text, columns);
  if (method.ok) return method.value;
  const { inputs, formulas } = method.error;
  throw wrongUsage(
    `--methods: "${text}" is no method. Columns of estimates: ${columns.join(", ") || "none"}. body: of ${inputs.join(", ")}. formula: ${formulas.join(", ")}.`,
  );
}

/** A column that only its looks speak for is never used without a person's word. */
function refuseUnconfirmed({ mapping }: ImportedStudy): void {
  const doubtful = mapping.filter(({ by, role }) => by === "looks" && role.type === "field");
  if (doubtful.length === 0) return;
  const maps = doubtful.map(
    ({ column, role, unit }) =>
      `--map "${column}=${role.type === "field" ? role.field : role.type}${unit === undefined ? "" : `:${unit}`}"`,
  );
  throw new CommandFailure(
    EXIT.notServed,
    `The names of some columns say nothing, and by their looks they may be the ones that are needed. If so, say it:\n${maps.join(" ")}\nNothing was computed.`,
  );
}

function notServed(path: string, issue: ImportIssue): CommandFailure {
  return new CommandFailure(
    EXIT.notServed,
    `Cannot read ${path}: ${ENGLISH_REPORT.issue(issue)} Nothing was computed.`,
  );
}

function wrongUsage(message: string): CommandFailure {
  return new CommandFailure(EXIT.wrongUsage, message);
}

/** How far a long step is, on a terminal, at most twice a second. */
function progress(): ((step: string, share: number) => undefined) & { readonly end: () => void } {
  const { isTTY } = process.stderr;
  let last = 0;
  const show = (step: string, share: number): undefined => {
    const now = performance.now();
    if (!isTTY || now - last < 500) return;
    last = now;
    process.stderr.write(`\r${step} ${Math.floor(100 * share)} %`);
  };
  return Object.assign(show, { end: () => isTTY && process.stderr.write("\r\u001b[K") });
}

function say(sentences: readonly string[]): void {
  for (const sentence of sentences) process.stderr.write(`${wrap(sentence, { hanging: "  " })}\n`);
}
