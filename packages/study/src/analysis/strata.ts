import { whoScores } from "../quality/who-flags.ts";
import type { StudyTable, WordColumn } from "../table/study-table.ts";

/** Strata that are made of numbers; every column of words is one by its own name. */
export const MADE_STRATA = ["length", "age", "weight-for-length"] as const;

const LENGTH_EDGES = [60, 75, 90, 105, 120, 135, 150] as const;
const AGE_EDGES_MONTHS = [6, 12, 24, 60, 120, 180] as const;
/** Weight-for-length z: severe and moderate wasting, above the median by 2 and 3. @source who-growth-2006 */
const CLASS_EDGES = [-3, -2, 2, 3] as const;

/** The groups of rows by a name of `MADE_STRATA` or of a column of words; undefined when the table has none such. */
export function strataOf(table: StudyTable, by: string): WordColumn | undefined {
  const words = table.words.get(by);
  if (words !== undefined) return words;
  if (by === "length") return banded(table.numbers.get("lengthCm"), LENGTH_EDGES, "cm");
  if (by === "age") return banded(table.numbers.get("ageMonths"), AGE_EDGES_MONTHS, "months");
  if (by === "weight-for-length") return banded(whoScores(table)["weight-for-length"], CLASS_EDGES, "SD");
  return undefined;
}

function banded(
  values: Float64Array | undefined,
  edges: readonly number[],
  unit: string,
): WordColumn | undefined {
  if (values === undefined) return undefined;
  const write = (edge: number): string => String(edge).replace("-", "−");
  const levels = [
    `under ${write(edges[0] as number)} ${unit}`,
    ...edges.slice(1).map((edge, i) => `${write(edges[i] as number)} to under ${write(edge)} ${unit}`),
    `${write(edges.at(-1) as number)} ${unit} and more`,
  ];
  const codes = Int32Array.from(values, (value) =>
    Number.isNaN(value) ? -1 : edges.filter((edge) => value >= edge).length,
  );
  return { codes, levels };
}
