import { weighChild } from "@steelyard/core/body";
import { combineReadings, type RepeatedField } from "@steelyard/core/entry";
import { centimetres, millimetres, months } from "@steelyard/core/units";
import type { PracticeChild } from "./practice-children.ts";

export interface Reading {
  readonly lengthCm: number;
  readonly armMm: number;
}

export interface PracticeResult extends Reading {
  readonly child: PracticeChild;
  readonly errorCm: number;
  readonly errorMm: number;
  /** What two careful readings of one person differ by in 19 of 20 pairs at most. */
  readonly limits: Readonly<Record<RepeatedField, number>>;
  readonly isWithin: Readonly<Record<RepeatedField, boolean>>;
  /** The weight from what was read and from what was drawn, kg; undefined where the readings give none. */
  readonly readKg: number | undefined;
  readonly drawnKg: number | undefined;
  readonly seconds: number;
}

/** How a reading lies beside what was drawn, and what the difference does to the weight. */
export function practiceResult(child: PracticeChild, reading: Reading, seconds: number): PracticeResult {
  const of = (field: RepeatedField) => combineReadings({ field, readings: [child[field], reading[field]] });
  const [length, arm] = [of("lengthCm"), of("armMm")];
  const tenth = (value: number): number => Math.round(value * 10) / 10;
  return {
    ...reading,
    child,
    errorCm: tenth(reading.lengthCm - child.lengthCm),
    errorMm: tenth(reading.armMm - child.armMm),
    limits: { lengthCm: length.limit, armMm: arm.limit },
    isWithin: { lengthCm: !length.needsThird, armMm: !arm.needsThird },
    readKg: weightOf(child, reading),
    drawnKg: weightOf(child, child),
    seconds,
  };
}

function weightOf(
  { sex, ageMonths, posture }: PracticeChild,
  { lengthCm, armMm }: Reading,
): number | undefined {
  const measurements = {
    lengthCm: centimetres(lengthCm),
    armMm: millimetres(armMm),
    ageMonths: months(ageMonths),
    sex,
    posture,
  };
  const weighed = weighChild({ measurements });
  return weighed.ok ? weighed.value.weights.totalKg : undefined;
}

/** The middle one, or the mean of the middle two. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (i: number): number => sorted[i] ?? 0;
  const half = sorted.length / 2;
  return sorted.length % 2 === 1 ? at(Math.floor(half)) : (at(half - 1) + at(half)) / 2;
}
