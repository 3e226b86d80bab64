import type { Measurements } from "@steelyard/core/body";
import { type StudyTable, wordAt } from "../table/study-table.ts";
import type { BodyInput } from "./method.ts";

const WORDS = new Set<string>(["sex", "build"]);
const ALL: readonly BodyInput[] = [
  "lengthCm",
  "armMm",
  "waistCm",
  "thighCm",
  "calfCm",
  "headCm",
  "sex",
  "ageMonths",
  "build",
  "carerKg",
];

/** Makes the function that gives the measurements of one row, of these inputs as far as they are known. */
export function childAt(
  table: StudyTable,
  inputs: readonly BodyInput[] = ALL,
): (row: number) => Measurements {
  const numbers = inputs.flatMap((name) => {
    const values = WORDS.has(name) ? undefined : table.numbers.get(name);
    return values === undefined ? [] : [{ name, values }];
  });
  const words = inputs.flatMap((name) => {
    const column = WORDS.has(name) ? table.words.get(name) : undefined;
    return column === undefined ? [] : [{ name, column }];
  });
  const posture = table.words.get("posture");
  return (row) => {
    const child: Record<string, number | string> = {};
    for (const { name, values } of numbers) {
      const value = values[row] as number;
      if (!Number.isNaN(value)) child[name] = value;
    }
    for (const { name, column } of words) {
      const word = wordAt(column, row);
      if (word !== undefined) child[name] = word;
    }
    const how = wordAt(posture, row);
    if (how !== undefined) child.posture = how;
    return child as Measurements;
  };
}
