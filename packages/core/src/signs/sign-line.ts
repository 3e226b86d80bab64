import type { LookupAnswer, LookupGapLine, LookupUnit, LookupValue, LookupWarning } from "../lookup/index.ts";

export type Sign =
  | "heart-rate"
  | "respiratory-rate"
  | "systolic-pressure"
  | "mean-pressure"
  | "blood-volume"
  | "urine-output";

/** Which figure of a sign that has several. */
export type SignKind = "lower-limit" | "fifth-centile" | "median";

export interface Centile {
  /** 1 to 99. */
  readonly centile: number;
  readonly value: number;
}

export interface SignValue extends LookupAnswer<LookupValue> {
  readonly unit: LookupUnit;
}

interface SignHead {
  /** `sign` or `sign.kind`, stable across versions. */
  readonly id: string;
  readonly sign: Sign;
  readonly kind?: SignKind;
}

/**
 * What is normal for one child. Of a rate the value runs from the 10th to the 90th centile; a lower limit and a
 * urine output are the least that is normal.
 */
export interface SignValueLine extends SignHead, SignValue {
  readonly unavailable?: undefined;
  readonly centiles?: readonly Centile[];
  readonly alternatives: readonly SignValue[];
  readonly warnings: readonly LookupWarning[];
}

export interface SignGapLine extends SignHead, LookupGapLine {}

export type SignLine = SignValueLine | SignGapLine;
