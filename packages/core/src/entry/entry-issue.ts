import type { EntryField, QuantityField } from "./entry-field.ts";
import type { UnitSymbol } from "./unit-table.ts";

/** Why a typed text cannot be taken. `proposals` are offered to the person and never applied unasked. */
export type EntryIssue =
  | { readonly type: "empty"; readonly field: EntryField }
  | { readonly type: "not-a-number"; readonly field: QuantityField; readonly text: string }
  /** "136 190", "136-140", "5 ft 4": which one is meant is not ours to choose. */
  | { readonly type: "several-numbers"; readonly field: QuantityField; readonly text: string }
  /** "1,360" is 1.36 to one reader and 1360 to another. */
  | {
      readonly type: "ambiguous-separator";
      readonly field: QuantityField;
      readonly text: string;
      readonly proposals: readonly UnitProposal[];
    }
  /** An age of "9" may be years or months. */
  | {
      readonly type: "unit-missing";
      readonly field: QuantityField;
      readonly text: string;
      readonly proposals: readonly UnitProposal[];
    }
  | {
      readonly type: "unit-unknown";
      readonly field: QuantityField;
      readonly text: string;
      readonly unit: string;
      readonly accepted: readonly UnitSymbol[];
    }
  /** Zero or negative where only a positive number makes sense. */
  | { readonly type: "not-positive"; readonly field: QuantityField; readonly value: number }
  /** Beyond every child ever measured: see `human-limits.ts`. Values in the unit of the field. */
  | {
      readonly type: "out-of-limits";
      readonly field: QuantityField;
      readonly value: number;
      readonly low: number;
      readonly high: number;
      readonly proposals: readonly UnitProposal[];
    }
  | {
      readonly type: "not-a-choice";
      readonly field: EntryField;
      readonly text: string;
      readonly choices: readonly string[];
    }
  /** Length and arm only make sense the other way round. */
  | {
      readonly type: "fields-swapped";
      readonly field: "armMm";
      readonly lengthCm: number;
      readonly armMm: number;
      readonly proposals: readonly SwapProposal[];
    };

/** The number as it would be had it been given in the unit `from`. */
export interface UnitProposal {
  readonly type: "unit";
  readonly field: QuantityField;
  readonly typed: number;
  readonly from: UnitSymbol;
  /** The value in the unit of the field. */
  readonly value: number;
}

/** The two numbers exchanged. */
export interface SwapProposal {
  readonly type: "swap";
  readonly lengthCm: number;
  readonly armMm: number;
}

/** Other numbers, each in the unit of its field. */
export interface ValuesProposal {
  readonly type: "values";
  readonly values: readonly { readonly field: QuantityField; readonly value: number }[];
}

export type Proposal = UnitProposal | SwapProposal | ValuesProposal;

/** Taken, but the reader must see how. */
export type EntryNotice =
  | {
      readonly type: "unit-converted";
      readonly field: QuantityField;
      readonly text: string;
      /** The value in the unit of the field. */
      readonly value: number;
    }
  /** No lying length was given, so it is the standing height + 0.7 cm. */
  | { readonly type: "length-from-height"; readonly standingHeightCm: number; readonly lengthCm: number }
  /** Both lengths were given and differ by more than measuring explains; the lying one is used. */
  | {
      readonly type: "lengths-disagree";
      readonly lengthCm: number;
      readonly standingHeightCm: number;
      readonly differenceCm: number;
    }
  /** An earlier weight says something only together with the age then: one was given without the other. */
  | {
      readonly type: "earlier-incomplete";
      readonly field: "earlierKg" | "earlierAgeMonths";
      readonly missing: "earlierKg" | "earlierAgeMonths";
    };
