import { type EstimateByMethodOptions, estimateByMethod } from "../methods/estimate-by-method.ts";
import type { Method, MethodEstimates } from "../methods/method.ts";
import type { StudyTable, WordColumn } from "../table/study-table.ts";
import { type ErrorSummary, summariseErrors } from "./error-summary.ts";
import { strataOf } from "./strata.ts";
import { type Proportion, wilsonInterval } from "./wilson-interval.ts";

export interface StratumAccuracy {
  readonly name: string;
  readonly summary: ErrorSummary;
  readonly coverage?: Proportion;
}

/** One method on all children it serves, and by strata. */
export interface MethodAccuracy {
  readonly estimates: MethodEstimates;
  /** Absent when it serves fewer than two. */
  readonly overall?: ErrorSummary;
  /** Scale weights inside the 95 % range, where the method has one. */
  readonly coverage?: Proportion;
  readonly by: readonly { readonly column: string; readonly strata: readonly StratumAccuracy[] }[];
}

export interface StudyAnalysis {
  /** The children compared. */
  readonly table: StudyTable;
  readonly methods: readonly MethodAccuracy[];
  /** All methods on the children that every one of them serves: what they may be compared on. */
  readonly common: { readonly children: number; readonly summaries: readonly (ErrorSummary | undefined)[] };
  /** Names asked for that the table has no groups of. */
  readonly unknownStrata: readonly string[];
}

export interface AnalyseStudyOptions extends EstimateByMethodOptions {
  readonly methods: readonly Method[];
  /** Names of strata: columns of words, `length`, `age`, `weight-for-length`. */
  readonly by?: readonly string[];
}

/**
 * Accuracy of every method against the scale weights of a table, overall and by strata. Strata of fewer than two children are left out.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { analyseStudy } from "@steelyard/study/analysis";
 *
 * const numbers = new Map([["weightKg", Float64Array.of(10, 20)], ["chart", Float64Array.of(11, 30)]]);
 * const table = { rows: 2, numbers, words: new Map(), rowNumbers: Int32Array.of(1, 2) };
 * const { methods } = analyseStudy(table, { methods: [{ type: "column", column: "chart" }] });
 * assert.equal(methods[0]?.overall?.within10.count, 1);
 * ```
 */
export function analyseStudy(
  table: StudyTable,
  { methods, by = [], ...options }: AnalyseStudyOptions,
): StudyAnalysis {
  const { onProgress } = options;
  const estimates = methods.map((method, i) =>
    estimateByMethod(table, method, {
      ...options,
      onProgress: (share) => onProgress?.((i + share) / methods.length),
    }),
  );
  const strata = by.map((column) => ({ column, groups: strataOf(table, column) }));
  const served = (row: number): boolean =>
    isWeighed(table, row) && estimates.every(({ estimateKg }) => !Number.isNaN(estimateKg[row] as number));
  const common = rowsWhere(table, served);
  const judged = estimates.map((own) => judgeMethod({ table, own, strata }));
  return {
    table,
    methods: judged,
    common: {
      children: common.length,
      // Where all children are common, the answer is there already.
      summaries: judged.map(({ estimates: own, overall }) =>
        overall?.n === common.length ? overall : summaryOf({ table, own, rows: common }),
      ),
    },
    unknownStrata: strata.flatMap(({ column, groups }) => (groups === undefined ? [column] : [])),
  };
}

function judgeMethod(given: {
  table: StudyTable;
  own: MethodEstimates;
  strata: readonly { column: string; groups: WordColumn | undefined }[];
}): MethodAccuracy {
  const { table, own, strata } = given;
  const rows = rowsWhere(
    table,
    (row) => isWeighed(table, row) && !Number.isNaN(own.estimateKg[row] as number),
  );
  const overall = summaryOf({ table, own, rows });
  const by = strata.flatMap(({ column, groups }) =>
    groups === undefined ? [] : [{ column, strata: judgeStrata({ table, own, rows, groups }) }],
  );
  return {
    estimates: own,
    by,
    ...(overall === undefined ? {} : { overall }),
    ...coverageOf({ table, own, rows }),
  };
}

function judgeStrata(given: {
  table: StudyTable;
  own: MethodEstimates;
  rows: Int32Array;
  groups: WordColumn;
}): StratumAccuracy[] {
  const { table, own, rows, groups } = given;
  // Counting sort: every row goes to its group in one pass, however many groups there are.
  const starts = new Int32Array(groups.levels.length + 1);
  for (const row of rows) {
    const code = groups.codes[row] as number;
    if (code >= 0) starts[code + 1] = (starts[code + 1] as number) + 1;
  }
  for (let code = 0; code < groups.levels.length; code++)
    starts[code + 1] = (starts[code + 1] as number) + (starts[code] as number);
  const next = starts.slice();
  const sorted = new Int32Array(starts.at(-1) as number);
  for (const row of rows) {
    const code = groups.codes[row] as number;
    if (code < 0) continue;
    sorted[next[code] as number] = row;
    next[code] = (next[code] as number) + 1;
  }
  return groups.levels.flatMap((name, code) => {
    const members = sorted.subarray(starts[code], starts[code + 1]);
    const summary = summaryOf({ table, own, rows: members });
    return summary === undefined ? [] : [{ name, summary, ...coverageOf({ table, own, rows: members }) }];
  });
}

function summaryOf({
  table,
  own,
  rows,
}: {
  table: StudyTable;
  own: MethodEstimates;
  rows: Int32Array;
}): ErrorSummary | undefined {
  const weights = table.numbers.get("weightKg") as Float64Array;
  const estimateKg = new Float64Array(rows.length);
  const trueKg = new Float64Array(rows.length);
  for (let i = 0; i < rows.length; i++) {
    estimateKg[i] = own.estimateKg[rows[i] as number] as number;
    trueKg[i] = weights[rows[i] as number] as number;
  }
  return summariseErrors({ estimateKg, trueKg });
}

function coverageOf({ table, own, rows }: { table: StudyTable; own: MethodEstimates; rows: Int32Array }): {
  coverage?: Proportion;
} {
  const { low95Kg, high95Kg } = own;
  if (low95Kg === undefined || high95Kg === undefined || rows.length === 0) return {};
  const weights = table.numbers.get("weightKg") as Float64Array;
  let inside = 0;
  for (const row of rows) {
    const weight = weights[row] as number;
    if (weight >= (low95Kg[row] as number) && weight <= (high95Kg[row] as number)) inside++;
  }
  return { coverage: wilsonInterval(inside, rows.length) };
}

function rowsWhere(table: StudyTable, holds: (row: number) => boolean): Int32Array {
  const rows = new Int32Array(table.rows);
  let n = 0;
  for (let row = 0; row < table.rows; row++) if (holds(row)) rows[n++] = row;
  return rows.subarray(0, n);
}

/** A row without a scale weight has nothing to be compared with. */
function isWeighed(table: StudyTable, row: number): boolean {
  return (table.numbers.get("weightKg")?.[row] ?? 0) > 0;
}
