import { formatNumber } from "@steelyard/core/units";
import { plainFormulas } from "../formulas/index.ts";
import type { Fate, ImportIssue } from "../import/index.ts";
import { BODY_INPUTS, type Method } from "../methods/index.ts";
import type { ReportWords } from "./report-words.ts";

const FATES: Readonly<Record<Fate, string>> = {
  included: "compared",
  "row-too-long": "more cells than the header",
  "weight-missing": "no scale weight",
  "weight-unreadable": "scale weight not a number",
  "weight-impossible": "scale weight of no child",
  "length-and-age-missing": "neither length nor age",
  oedema: "oedema",
};

/** The report in English. */
export const ENGLISH_REPORT: ReportWords = {
  language: "en",
  reportTitle: (file) => `Accuracy of weight estimates: ${file}`,
  count: (n) => formatNumber(n),
  percent: (value) => `${value >= 0.05 ? "+" : ""}${tenth(value)} %`,
  methodName,
  fate: (fate) => FATES[fate],
  issue: describeIssue,
  rowsRead: (n) => `Rows read: ${formatNumber(n)}`,
  leftOut: (n) => `Left out: ${formatNumber(n)}`,
  compared: (n) => `Compared: ${formatNumber(n)}`,
  servedBy: "With an estimate by",
  flowTitle: "From rows to comparison",
  percentageError: "Estimate minus true weight, % of true weight",
  meanOfBoth: "Mean of estimate and scale weight, kg",
  withinAxis: "Within 10 % (dot) and 20 % (square) of the scale weight, % of children, with 95 % intervals",
  meanEstimate: "Mean estimate of a tenth of the children, kg",
  meanWeight: "Mean scale weight, kg",
};

export function tenth(value: number): string {
  return formatNumber(Math.round(value * 10) / 10);
}

function methodName(method: Method): string {
  switch (method.type) {
    case "column":
      return method.column;
    case "formula":
      return plainFormulas.find(({ sourceId }) => sourceId === method.sourceId)?.name ?? method.sourceId;
    case "body": {
      const words = method.inputs.map((input) =>
        Object.keys(BODY_INPUTS).find((word) => BODY_INPUTS[word] === input),
      );
      return `Body model: ${words.join(" + ")}`;
    }
  }
}

const KINDS: Readonly<Record<string, string>> = {
  xls: "an old .xls workbook: save it as .xlsx or CSV",
  pdf: "a PDF",
  gzip: "a gzip archive: unpack it first",
  zip: "a zip archive that holds no workbook",
  sav: "an SPSS file: export it as CSV",
  dta: "a Stata file: export it as CSV",
  binary: "neither text, workbook nor SAS transport file",
};

/** What is wrong with a file and what to do, in one sentence or two. */
function describeIssue(issue: ImportIssue): string {
  switch (issue.type) {
    case "empty-file":
      return "The file is empty. A table begins with a line of column names.";
    case "not-a-table":
      return `The file is ${KINDS[issue.found] ?? issue.found}${issue.found === "binary" ? ` (byte ${formatNumber(issue.atByte)})` : ""}.`;
    case "header-only":
      return `There is a header of ${formatNumber(issue.columns)} columns and no row under it.`;
    case "one-column":
      return `The header is one cell, "${issue.header}": the mark between cells must be a comma, semicolon, tab or bar.`;
    case "header-missing":
      return `The first row holds numbers (${issue.firstRow.join(", ")}) and no column names: add a header.`;
    case "too-many-columns":
      return `The header has ${formatNumber(issue.columns)} columns or more, and at most ${formatNumber(issue.most)} are read: is the file turned on its side?`;
    case "quote-not-closed":
      return `A quotation mark that opens in row ${formatNumber(issue.row)} is never closed.`;
    case "workbook-damaged":
      return `The workbook is damaged or cut off (${issue.detail}). Open it, save it again, and try that.`;
    case "workbook-too-large":
      return `The workbook would unpack to ${formatNumber(Math.round(issue.bytes / 1e6))} MB, or is packed tighter than any table: save the sheet as CSV.`;
    case "sheet-scattered":
      return `A sheet has ${formatNumber(issue.cells)} cells as far apart as ${issue.farthest}: delete what lies outside the table, or save the sheet as CSV.`;
    case "sheet-missing":
      return `There is no sheet "${issue.sheet}"; there are: ${issue.sheets.join(", ")}.`;
    case "transport-damaged":
      return `The SAS transport file is cut off or damaged at byte ${formatNumber(issue.atByte)}.`;
    case "transport-version":
      return `The SAS transport file is of ${issue.found}; version 5 is read.`;
    case "column-unknown":
      return `There is no column "${issue.column}"; there are: ${listed(issue.columns)}.`;
    case "column-missing":
      return issue.field === "weightKg"
        ? `No column is taken for the scale weight. Say which it is: --map "name=weightKg:kg". Columns: ${listed(issue.columns)}.`
        : `No column is taken for a length, a height or an age. Say which it is: --map "name=lengthCm:cm". Columns: ${listed(issue.columns)}.`;
  }
}

function listed(columns: readonly string[]): string {
  const rest = columns.length > 20 ? ` and ${formatNumber(columns.length - 20)} more` : "";
  return columns.slice(0, 20).join(", ") + rest;
}
