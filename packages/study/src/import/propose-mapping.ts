import type { UnitSymbol } from "@steelyard/core/entry";
import type { ColumnMapping, MappingChange } from "./column-mapping.ts";
import { type NameRead, readColumnName } from "./column-names.ts";
import { belongTogether, likelyUnits, medianOf, otherUnit } from "./looks.ts";
import { cellNumber, isMissingCell } from "./read-cell.ts";
import { isQuantity, type QuantityName, STUDY_UNIT, type StudyField, WORD_FIELDS } from "./study-field.ts";

/** A column as far as it was looked at. */
interface Seen {
  readonly column: string;
  readonly name: NameRead;
  readonly cells: readonly string[];
  readonly numbers: readonly number[];
}

/** More different words than this are names of rows, not of groups. */
const MOST_GROUPS = 500;
const ESTIMATE_WORDS = new Set([
  "est",
  "estimate",
  "estimated",
  "estimation",
  "predicted",
  "pred",
  "method",
  "formula",
  "total",
]);
/** An end of an estimate's range is no estimate: "low95_kg", "upper". */
const BOUND_WORD = /^(?:low|lower|high|upper)\d*$/;
/** What a study cannot do without, and what is looked for in a file whose names say nothing. */
const BY_LOOKS: readonly QuantityName[] = ["weightKg", "statureCm", "armMm"];

/**
 * What each column of a file is taken for: by its name, else by its looks, with the unit from the name, else from the numbers. What a person
 * said of a column (`changes`) stands. Every column gets a line, those that are left too.
 */
export function proposeMapping({
  header,
  sample,
  decimalMark,
  changes = [],
}: {
  readonly header: readonly string[];
  readonly sample: readonly (readonly string[])[];
  readonly decimalMark: "." | ",";
  readonly changes?: readonly MappingChange[];
}): readonly ColumnMapping[] {
  const columns = header.map((column, index): Seen => {
    const cells = sample.map((row) => row[index] ?? "").filter((cell) => !isMissingCell(cell));
    const numbers = cells
      .map((cell) => cellNumber(cell, decimalMark))
      .filter((value) => !Number.isNaN(value));
    return { column, name: readColumnName(column), cells, numbers };
  });
  const taken = new Map<StudyField, string>();
  const changed = new Map(changes.map((change) => [change.column, change]));
  for (const { column, role } of changes) if (role.type === "field") taken.set(role.field, column);
  // The finer unit of two columns of age is the better one; otherwise the first column holds.
  const order = [...columns].sort((a, b) => coarseness(a.name) - coarseness(b.name));
  for (const { column, name } of order) {
    if (name.field !== undefined && !changed.has(column) && !taken.has(name.field))
      taken.set(name.field, column);
  }
  const mapped = columns.map((seen) => {
    const change = changed.get(seen.column);
    return change === undefined ? byName(seen, taken) : byPerson(seen, change);
  });
  return settleUnits(byLooks(mapped, columns), columns);
}

function coarseness({ unit }: NameRead): number {
  return unit === "y" ? 1 : 0;
}

function byPerson(seen: Seen, change: MappingChange): ColumnMapping {
  const { role, unit, alsoUnit } = change;
  const known = unit ?? seen.name.unit;
  return {
    column: seen.column,
    role,
    by: "person",
    unitBy: unit === undefined ? (known === undefined ? "none" : "name") : "person",
    ...(known === undefined ? {} : { unit: known }),
    ...(alsoUnit === undefined ? {} : { alsoUnit }),
  };
}

function byName(seen: Seen, taken: ReadonlyMap<StudyField, string>): ColumnMapping {
  const { column, name } = seen;
  const unit = name.unit === undefined ? {} : { unit: name.unit };
  const unitBy = name.unit === undefined ? "none" : "name";
  if (name.field !== undefined) {
    const holder = taken.get(name.field) as string;
    if (holder === column)
      return { column, role: { type: "field", field: name.field }, by: "name", unitBy, ...unit };
    return {
      column,
      role: { type: "left" },
      by: "name",
      unitBy,
      ...unit,
      doubt: { type: "field-taken", field: name.field, by: holder },
    };
  }
  const isMass = name.unit === "kg" || name.unit === "lb";
  const isNumeric = seen.numbers.length > 0.8 * seen.cells.length && seen.cells.length > 0;
  const isBound = name.words.some((word) => BOUND_WORD.test(word));
  if (isNumeric && !isBound && (isMass || name.words.some((word) => ESTIMATE_WORDS.has(word)))) {
    return { column, role: { type: "estimate" }, by: "name", unitBy, ...unit };
  }
  const values = new Set(seen.cells).size;
  const isGroup =
    seen.cells.length > 0 && (isNumeric ? values <= 12 : values <= Math.max(12, seen.cells.length / 2));
  return isGroup && values <= MOST_GROUPS
    ? { column, role: { type: "group" }, by: "looks", unitBy: "none" }
    : {
        column,
        role: { type: "left" },
        by: "looks",
        unitBy: "none",
        ...(isNumeric ? {} : { doubt: { type: "too-many-values", values } as const }),
      };
}

/** Where no name says weight, length, arm or sex, the columns that look like it: to be confirmed. */
function byLooks(mapped: readonly ColumnMapping[], columns: readonly Seen[]): ColumnMapping[] {
  const result = [...mapped];
  const has = (field: StudyField): boolean =>
    result.some(({ role }) => role.type === "field" && role.field === field);
  const free = (i: number): boolean =>
    ["left", "group"].includes(result[i]?.role.type ?? "") && result[i]?.by === "looks";
  const take = (i: number, field: StudyField): void => {
    const { column } = columns[i] as Seen;
    result[i] = { column, role: { type: "field", field }, by: "looks", unitBy: "none" };
  };
  if (!has("sex")) {
    const i = columns.findIndex(
      ({ cells }, at) =>
        free(at) && cells.length > 0 && new Set(cells).size === 2 && cells.every((cell) => isSexWord(cell)),
    );
    if (i >= 0) take(i, "sex");
  }
  if (has("weightKg") && (has("lengthCm") || has("standingHeightCm") || has("statureCm"))) return result;
  for (const field of BY_LOOKS) {
    if (field === "statureCm" ? has("lengthCm") || has("standingHeightCm") || has("statureCm") : has(field))
      continue;
    const own = STUDY_UNIT[field];
    const i = columns.findIndex(
      ({ cells, numbers }, at) =>
        free(at) &&
        numbers.length > 0.8 * cells.length &&
        new Set(numbers).size > 20 &&
        likelyUnits(field, numbers).includes(own) &&
        spreadFits(field, numbers),
    );
    if (i >= 0) take(i, field);
  }
  return result;
}

function isSexWord(cell: string): boolean {
  const word = cell.trim().toLowerCase();
  return (
    !/^\d$/.test(word) &&
    Object.values(WORD_FIELDS.sex).some((words) => (words as readonly string[]).includes(word))
  );
}

/** A weight varies by a factor, a length less, an arm least: enough to tell them apart where the names do not. */
function spreadFits(field: QuantityName, values: readonly number[]): boolean {
  const sorted = [...values].sort((a, b) => a - b);
  const ratio =
    (sorted[Math.floor(0.9 * sorted.length)] as number) /
    Math.max(0.01, sorted[Math.floor(0.1 * sorted.length)] as number);
  const middle = medianOf(values);
  if (field === "weightKg")
    return ratio > 1.25 && ratio < 12 && middle < 60 && values.some((value) => !Number.isInteger(value));
  if (field === "armMm") return ratio < 2.2 && middle > 100;
  return ratio > 1.05 && ratio < 3 && middle > 45;
}

function settleUnits(mapped: readonly ColumnMapping[], columns: readonly Seen[]): readonly ColumnMapping[] {
  const numbersOf = (i: number): readonly number[] => columns[i]?.numbers ?? [];
  const options = mapped.map(({ role, unit }, i): readonly UnitSymbol[] => {
    if (unit !== undefined) return [unit];
    if (role.type === "estimate") return ["kg"];
    if (role.type !== "field" || !isQuantity(role.field)) return [];
    const found = numbersOf(i).length === 0 ? [] : likelyUnits(role.field, numbersOf(i));
    return found.length === 0 ? [STUDY_UNIT[role.field]] : found;
  });
  const indexOf = (...fields: readonly StudyField[]): number =>
    mapped.findIndex(({ role }) => role.type === "field" && fields.includes(role.field));
  const [w, l] = [indexOf("weightKg"), indexOf("lengthCm", "standingHeightCm", "statureCm")];
  if (w >= 0 && l >= 0 && numbersOf(w).length > 0 && numbersOf(l).length > 0) {
    // Weight and length settle each other's unit where either alone leaves two.
    const pairs = (options[w] ?? []).flatMap((weight) =>
      (options[l] ?? []).map((length) => ({ weight, length })),
    );
    const fit = pairs.filter(({ weight, length }) =>
      belongTogether(
        { median: medianOf(numbersOf(w)), unit: weight },
        { median: medianOf(numbersOf(l)), unit: length },
      ),
    );
    if (fit.length > 0) {
      options[w] = [...new Set(fit.map(({ weight }) => weight))];
      options[l] = [...new Set(fit.map(({ length }) => length))];
    }
  }
  return mapped.map((own, i) => {
    const [unit, ...others] = options[i] ?? [];
    if (unit === undefined) return own;
    const named = own.unit !== undefined;
    const { role } = own;
    const mixed =
      role.type === "field" && isQuantity(role.field) && own.alsoUnit === undefined
        ? otherUnit(role.field, unit, numbersOf(i))
        : undefined;
    const doubt: ColumnMapping["doubt"] =
      mixed !== undefined
        ? { type: "mixed-units", other: mixed.unit, share: mixed.share }
        : !named && others.length > 0
          ? { type: "unit-unclear", units: [unit, ...others] }
          : own.doubt;
    return { ...own, unit, unitBy: named ? own.unitBy : "looks", ...(doubt === undefined ? {} : { doubt }) };
  });
}
