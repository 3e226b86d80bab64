import { withoutDrift } from "../units/without-drift.ts";

/** Which measurements are read twice. */
export type RepeatedField = "lengthCm" | "armMm";

/** Two or three readings of the same thing, as one. */
export interface CombinedReadings {
  /** The mean of two readings, the median of three, in the unit of the field. */
  readonly value: number;
  /** How many readings count as averaged: the median of three is hardly better than the mean of two. */
  readonly readings: 1 | 2;
  /** The largest less the smallest, in the unit of the field. */
  readonly spread: number;
  /** What two careful readings differ by in 19 of 20 pairs at most. */
  readonly limit: number;
  /** Two readings differ by more than that: a third one has to decide. */
  readonly needsThird: boolean;
}

/** Two readings of the same observer differ by more than this many technical errors in 1 of 20 pairs: 1.96 x the root of 2. */
const limitInTechnicalErrors = 2.77;

/** Technical errors in two standardisation tests, robust against slips; of the two tests of the length the larger. */
const technicalErrors = { lengthCm: 0.63, armMm: 3.15 } as const satisfies Record<RepeatedField, number>;

/**
 * Two or three readings of a length (cm) or an arm (mm) as one, and whether they agree.
 *
 * value = mean of two, median of three (common practice of anthropometry); limit = 2.77 x technical error of measurement,
 * 0.63 cm for the length and 3.15 mm for the arm within an observer. `readings` holds one to three finite numbers in the unit of the field,
 * in the order taken; throws a `RangeError` on anything else.
 *
 * @source measurement-repeats `reference/repeats-log.md`, robust
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { combineReadings } from "@steelyard/core/entry";
 *
 * const close = combineReadings({ field: "armMm", readings: [190, 194] });
 * assert.deepEqual([close.value, close.readings, close.needsThird], [192, 2, false]);
 * const apart = combineReadings({ field: "lengthCm", readings: [136, 138] });
 * assert.ok(apart.needsThird && apart.spread === 2 && apart.limit === 1.7);
 * assert.equal(combineReadings({ field: "lengthCm", readings: [136, 138, 136.4] }).value, 136.4);
 * ```
 */
export function combineReadings({
  field,
  readings,
}: {
  readonly field: RepeatedField;
  readonly readings: readonly number[];
}): CombinedReadings {
  const sorted = readings.toSorted((a, b) => a - b);
  const [low = Number.NaN] = sorted;
  const high = sorted.at(-1) ?? Number.NaN;
  if (readings.length > 3 || !Number.isFinite(low) || !Number.isFinite(high)) {
    throw new RangeError(
      `Cannot combine readings as there must be one to three finite numbers: current value is ${readings.join(", ")}`,
    );
  }
  const value = sorted.length === 3 ? (sorted[1] as number) : withoutDrift((low + high) / 2);
  const spread = withoutDrift(high - low);
  const limit = Math.round(limitInTechnicalErrors * technicalErrors[field] * 10) / 10;
  return {
    value,
    readings: readings.length === 1 ? 1 : 2,
    spread,
    limit,
    needsThird: readings.length === 2 && spread > limit,
  };
}
