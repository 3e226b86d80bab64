import type { Lms } from "./lms.ts";

export type Sex = "m" | "f";

/**
 * A published growth standard or reference: the distribution of one quantity (`Value`) by age or length
 * (`Index`), for each sex.
 */
export interface GrowthStandard<Index extends number, Value extends number> {
  readonly id: string;
  readonly sourceIds: readonly string[];
  readonly acknowledgement: string;
  /** What it is looked up by, and the range in which it is published. */
  readonly index: {
    readonly name: string;
    readonly unit: string;
    readonly low: Index;
    readonly high: Index;
  };
  /** What it is about. */
  readonly value: { readonly name: string; readonly unit: string };
  /** WHO's rule for skewed quantities: beyond 3 SD the distance between 2 and 3 SD is the unit. */
  readonly adjustedBeyond3Sd: boolean;
  /** L, M and S, interpolated linearly between published rows. Throws a `RangeError` outside the range. */
  readonly lms: (query: { readonly sex: Sex; readonly at: Index }) => Lms;
  /** Gives a plain number the unit of the value. */
  readonly asValue: (value: number) => Value;
}

/** Why a growth standard gives no answer. */
export type GrowthIssue =
  /** The age or length lies outside the range of the standard. */
  | {
      readonly type: "index-out-of-range";
      readonly standardId: string;
      readonly index: string;
      readonly unit: string;
      readonly value: number;
      readonly low: number;
      readonly high: number;
    }
  /** No child has this weight, length, circumference or index. */
  | {
      readonly type: "value-out-of-range";
      readonly standardId: string;
      readonly quantity: string;
      readonly unit: string;
      readonly value: number;
      readonly low: number;
      readonly high: number;
    }
  /** No value of the quantity has this z-score. */
  | {
      readonly type: "z-out-of-range";
      readonly standardId: string;
      readonly value: number;
      readonly low: number;
      readonly high: number;
    };
