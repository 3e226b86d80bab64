import type { SourceRef } from "../citation.ts";
import type { LookupQuantity, LookupStep, LookupUnit, Span } from "./lookup-step.ts";

/** What a value rests on in the end; `height-age` is an age that was worked out from the length. */
export type LookupRest = Exclude<LookupQuantity, "tube"> | "height-age";

/** What one rule says for this child. */
export interface LookupAnswer<Value> {
  readonly value: Value;
  readonly rests: readonly LookupRest[];
  readonly working: readonly LookupStep[];
  readonly sources: readonly SourceRef[];
}

/** Why there is no value for this child. */
export type LookupGap =
  /** One of these measurements would give it. */
  | { readonly type: "needs"; readonly oneOf: readonly LookupRest[] }
  /** The rule was not made for this child: [low, high) in the unit of the quantity. */
  | {
      readonly type: "outside-rule";
      readonly by: LookupQuantity;
      readonly value: number;
      readonly low?: number;
      readonly high?: number;
    };

/** Usable, but the reader must know. */
export type LookupWarning =
  /** The age is not known; the one used goes with the length. */
  | {
      readonly type: "height-age";
      readonly lengthCm: number;
      readonly ageMonths: number;
      readonly bound?: "at-least" | "at-most";
    }
  /** Published rules give sizes this far apart. */
  | { readonly type: "rules-differ"; readonly low: number; readonly high: number; readonly unit: LookupUnit }
  /** Past the end of the rule or table, whose last value is shown. */
  | { readonly type: "held"; readonly by: LookupQuantity; readonly at: number }
  /** First 28 days of life. */
  | { readonly type: "newborn" }
  /** The rule may place the tip of the tube close to the carina in small infants. */
  | { readonly type: "deep-in-infants" }
  /** No bladder of the list comes near the right width; the pressure will read wrong. */
  | { readonly type: "bladder-misfit"; readonly reads: "high" | "low"; readonly percentOfArm: number }
  /** The limit lies below the 5th centile at this age. */
  | { readonly type: "below-fifth-centile" }
  /** Total weight would give more; the lighter of total and ideal weight is used. */
  | { readonly type: "lighter-weight-used"; readonly totalKg: number; readonly idealKg: number };

/** Common to every line: `unavailable` tells a line without a value, and says why. */
export interface LookupGapLine {
  readonly unavailable: LookupGap;
  readonly rests: readonly LookupRest[];
  readonly working: readonly LookupStep[];
  readonly warnings: readonly LookupWarning[];
  readonly sources: readonly SourceRef[];
}

/** A value, or a range of values. */
export type LookupValue = number | Span;
