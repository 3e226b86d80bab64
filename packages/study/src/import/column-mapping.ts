import type { UnitSymbol } from "@steelyard/core/entry";
import type { StudyField } from "./study-field.ts";

/** What becomes of a column. A `group` is kept as words, for strata; an `estimate` is a method's weight in kg. */
export type ColumnRole =
  | { readonly type: "field"; readonly field: StudyField }
  | { readonly type: "estimate" }
  | { readonly type: "group" }
  | { readonly type: "left" };

/** One column of the file and what it is taken for: data, for a person to confirm or to change. */
export interface ColumnMapping {
  readonly column: string;
  readonly role: ColumnRole;
  /** The unit its numbers are in; absent where it has none. */
  readonly unit?: UnitSymbol;
  /** A second unit: a number that no child has in `unit` but may have in this one is converted, and counted. */
  readonly alsoUnit?: UnitSymbol;
  /** How it was settled. What was settled by looks wants a person's word. */
  readonly by: "name" | "looks" | "person";
  readonly unitBy: "name" | "looks" | "person" | "none";
  /** Why it is left, or what is doubtful. */
  readonly doubt?: MappingDoubt;
}

export type MappingDoubt =
  /** Another column is taken for the same field. */
  | { readonly type: "field-taken"; readonly field: StudyField; readonly by: string }
  /** Its numbers may be in either unit. */
  | { readonly type: "unit-unclear"; readonly units: readonly UnitSymbol[] }
  /** Some numbers look like another unit: share of the sample, 0 to 1. */
  | { readonly type: "mixed-units"; readonly other: UnitSymbol; readonly share: number }
  | { readonly type: "too-many-values"; readonly values: number };

/** What a person says of a column; it goes before everything recognised. */
export interface MappingChange {
  readonly column: string;
  readonly role: ColumnRole;
  readonly unit?: UnitSymbol;
  readonly alsoUnit?: UnitSymbol;
}
