import { type StudyTable, selectRows, wordAt } from "../table/study-table.ts";
import { type DigitPreference, digitPreference } from "./digit-preference.ts";
import { type Duplicates, findDuplicates } from "./find-duplicates.ts";
import { findSlips, type SlipSearch } from "./find-slips.ts";
import { isFlagged, type WhoIndicator, whoScores } from "./who-flags.ts";

export interface FlagCount {
  readonly indicator: WhoIndicator;
  readonly scored: number;
  readonly flagged: number;
  /** Mean and SD of the z-scores that are not flagged; absent with fewer than two. */
  readonly mean?: number;
  readonly sd?: number;
  /** Numbers of the first rows flagged. */
  readonly first: readonly number[];
}

/** Quality of all rows, or of those of one measurer or site. */
export interface GroupQuality {
  readonly rows: number;
  readonly missing: readonly { readonly column: string; readonly rows: number }[];
  readonly flags: readonly FlagCount[];
  readonly digits: readonly { readonly column: string; readonly preference: DigitPreference }[];
  readonly slips: number;
}

export interface StudyQuality extends GroupQuality {
  readonly duplicates: Duplicates;
  readonly slipSearch: SlipSearch;
  readonly by: readonly {
    readonly column: string;
    readonly groups: readonly ({ readonly name: string } & GroupQuality)[];
  }[];
}

/** The step a reading is written to, by field. */
const STEPS: Readonly<Record<string, number>> = { weightKg: 0.1, lengthCm: 0.1, armMm: 1 };
const COMPARED = ["weightKg", "lengthCm", "armMm", "ageMonths", "sex"] as const;
const INDICATORS: readonly WhoIndicator[] = [
  "weight-for-age",
  "length-for-age",
  "weight-for-length",
  "bmi-for-age",
];
const SHOWN = 8;
/** More groups than this are not told apart one by one. */
const MOST_GROUPS = 60;

/**
 * Data quality of a study: WHO flags, preference for last digits, rows entered twice, values that do not belong together by the body model,
 * and what is missing; overall and by the columns named (measurer, site). Nothing is left out or changed for it.
 *
 * @source who-anthro
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { assessQuality } from "@steelyard/study/quality";
 *
 * const table = { rows: 2, numbers: new Map([["weightKg", Float64Array.of(28, 30)]]), words: new Map(), rowNumbers: Int32Array.of(1, 2) };
 * assert.equal(assessQuality(table).rows, 2);
 * ```
 */
export function assessQuality(
  table: StudyTable,
  { by = [] }: { readonly by?: readonly string[] } = {},
): StudyQuality {
  const slipSearch = findSlips(table);
  const slipAt = new Set(slipSearch.slips.map(({ at }) => at));
  const scores = whoScores(table);
  const all = (own: StudyTable, keep: (row: number) => boolean): GroupQuality => {
    const flags = INDICATORS.map((indicator) => countFlags({ indicator, z: scores[indicator], table, keep }));
    return {
      rows: own.rows,
      missing: missingOf(own),
      flags: flags.filter(({ scored }) => scored > 0),
      digits: digitsOf(own),
      slips: [...slipAt].filter(keep).length,
    };
  };
  const groupsBy = by.flatMap((column) => {
    const words = table.words.get(column);
    if (words === undefined || words.levels.length > MOST_GROUPS) return [];
    const groups = words.levels.map((name) => {
      const keep = (row: number): boolean => wordAt(words, row) === name;
      return { name, ...all(selectRows(table, keep), keep) };
    });
    return [{ column, groups: groups.filter(({ rows }) => rows > 0) }];
  });
  return { ...all(table, () => true), duplicates: findDuplicates(table, COMPARED), slipSearch, by: groupsBy };
}

function missingOf(table: StudyTable): GroupQuality["missing"] {
  const numbers = Array.from(table.numbers, ([column, values]) => ({
    column,
    rows: count(values, Number.isNaN),
  }));
  const words = Array.from(table.words, ([column, { codes }]) => ({
    column,
    rows: count(codes, (code) => code < 0),
  }));
  return [...numbers, ...words];
}

function digitsOf(table: StudyTable): GroupQuality["digits"] {
  return Object.entries(STEPS).flatMap(([column, step]) => {
    const values = table.numbers.get(column);
    const preference = values === undefined ? undefined : digitPreference(values, { step });
    return preference === undefined ? [] : [{ column, preference }];
  });
}

function countFlags(given: {
  indicator: WhoIndicator;
  z: Float64Array;
  table: StudyTable;
  keep: (row: number) => boolean;
}): FlagCount {
  const { indicator, z, table, keep } = given;
  let [scored, flagged, sum, squares] = [0, 0, 0, 0];
  const first: number[] = [];
  for (let row = 0; row < z.length; row++) {
    const value = z[row] as number;
    if (Number.isNaN(value) || !keep(row)) continue;
    scored++;
    if (isFlagged(indicator, value)) {
      flagged++;
      if (first.length < SHOWN) first.push(table.rowNumbers[row] as number);
    } else {
      sum += value;
      squares += value * value;
    }
  }
  const n = scored - flagged;
  const spread =
    n < 2 ? {} : { mean: sum / n, sd: Math.sqrt(Math.max(0, squares - (sum * sum) / n) / (n - 1)) };
  return { indicator, scored, flagged, first, ...spread };
}

function count<T extends Float64Array | Int32Array>(values: T, holds: (value: number) => boolean): number {
  let sum = 0;
  for (const value of values) if (holds(value)) sum++;
  return sum;
}
