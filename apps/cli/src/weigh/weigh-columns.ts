import type { EntryField } from "@steelyard/core/entry";
import { err, ok, type Result } from "@steelyard/core/result";

/** The measurements that are read; names are a contract. */
export const MEASUREMENT_COLUMNS: Readonly<Record<string, EntryField>> = {
  lying_length_cm: "lengthCm",
  standing_height_cm: "standingHeightCm",
  arm_mm: "armMm",
  waist_cm: "waistCm",
  thigh_cm: "thighCm",
  calf_cm: "calfCm",
  head_cm: "headCm",
  ulna_cm: "ulnaCm",
  knee_height_cm: "kneeHeightCm",
  tibia_cm: "tibiaCm",
  sex: "sex",
  age_months: "ageMonths",
  posture: "posture",
  people: "people",
  length_readings: "lengthReadings",
  arm_step_mm: "armStepMm",
  arm_readings: "armReadings",
  build: "build",
  carer_kg: "carerKg",
  earlier_kg: "earlierKg",
  earlier_age_months: "earlierAgeMonths",
  missing_limb: "missingLimb",
  oedema: "oedema",
  pregnant: "pregnant",
};

/** One of these must be known of a child. */
const SERVABLE: readonly EntryField[] = [
  "lengthCm",
  "standingHeightCm",
  "ageMonths",
  "kneeHeightCm",
  "tibiaCm",
  "ulnaCm",
];

/** The columns that are added, in this order; names are a contract. */
export const ADDED_COLUMNS: readonly string[] = ["total_kg", "low95_kg", "high95_kg", "ideal_kg", "notes"];

interface PlannedColumn {
  readonly field: EntryField;
  readonly index: number;
}

/** Which names are read as what, and which the command adds itself. */
export interface ColumnRules {
  readonly fields: Readonly<Record<string, EntryField>>;
  readonly added: readonly string[];
}

const WEIGH_RULES: ColumnRules = { fields: MEASUREMENT_COLUMNS, added: ADDED_COLUMNS };

/** Where in a row each measurement stands. */
export interface ColumnPlan {
  readonly columns: readonly PlannedColumn[];
  /** Cells in a row. */
  readonly width: number;
  /** Names that are not read, in order; their cells are passed on. */
  readonly passedOn: readonly string[];
  /** Every name that would have been read. */
  readonly known: readonly string[];
}

export type HeaderIssue =
  | { readonly type: "duplicate-column"; readonly column: string }
  | { readonly type: "added-column-present"; readonly column: string }
  | {
      readonly type: "length-and-age-missing";
      readonly header: readonly string[];
      readonly known: readonly string[];
    };

/** Reads a header: names in any order and case, any subset with a length or an age in it. */
export function planColumns(
  header: readonly string[],
  { fields, added: own }: ColumnRules = WEIGH_RULES,
): Result<ColumnPlan, HeaderIssue> {
  const known = Object.keys(fields);
  const names = header.map((name) => name.trim().toLowerCase());
  const added = names.find((name) => own.includes(name));
  if (added !== undefined) return err({ type: "added-column-present", column: added });
  const columns: PlannedColumn[] = [];
  const passedOn: string[] = [];
  for (const [index, name] of names.entries()) {
    const field = Object.hasOwn(fields, name) ? fields[name] : undefined;
    if (field === undefined) passedOn.push(header[index] ?? "");
    else if (columns.some((column) => column.field === field))
      return err({ type: "duplicate-column", column: name });
    else columns.push({ field, index });
  }
  const isServable = columns.some(({ field }) => SERVABLE.includes(field));
  if (!isServable) return err({ type: "length-and-age-missing", header, known });
  return ok({ columns, width: header.length, passedOn, known });
}

/** What is wrong with a header and what to do, as sentences. */
export function describeHeaderIssue(issue: HeaderIssue): string {
  switch (issue.type) {
    case "duplicate-column":
      return `Column ${issue.column} stands in the header twice: which one holds is not to be guessed. Rename or remove one.`;
    case "added-column-present":
      return `Column ${issue.column} is already there, and weigh would add it (${ADDED_COLUMNS.join(", ")}). Rename or remove it.`;
    case "length-and-age-missing":
      return (
        "No column holds a length or an age: lying_length_cm, standing_height_cm or age_months is required. " +
        `The header reads: ${issue.header.join(", ")}. Columns that are read: ${issue.known.join(", ")}.`
      );
  }
}

/** Names that look like a column that is read, such as `arm_cm`, and are not: worth a word. */
export function lookAlikes({
  passedOn,
  known,
}: Pick<ColumnPlan, "passedOn" | "known">): readonly { readonly name: string; readonly column: string }[] {
  return passedOn.flatMap((name) => {
    const stem = stemOf(name);
    const column = known.find((name) => stem !== "" && stemOf(name) === stem);
    return column === undefined ? [] : [{ name, column }];
  });
}

/** "arm" of `arm_mm`, `Arm (cm)` and `arm_circumference`; "length" of `lying_length_cm` and `length`. */
function stemOf(name: string): string {
  const words = name.toLowerCase().match(/[a-z]+/g) ?? [];
  const filler = /^(mm|cm|m|in|kg|g|months?|years?|lying|standing|circumference|weight)$/;
  return words.filter((word) => !filler.test(word)).join(" ");
}
