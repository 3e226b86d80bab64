import type { Measurements } from "../body/index.ts";
import { heightToLength } from "../growth/index.ts";
import { err, ok, type Result } from "../result.ts";
import { withoutDrift } from "../units/without-drift.ts";
import type { EntryField, EntryValues } from "./entry-field.ts";
import type { EntryIssue, EntryNotice } from "./entry-issue.ts";
import { HUMAN_LIMITS, LENGTHS_AGREE_WITHIN_CM, SMALLEST_ARM_MM_PER_LENGTH_CM } from "./human-limits.ts";
import { readEntry } from "./read-entry.ts";
import type { ReadOptions } from "./read-quantity.ts";

/** What was typed into each field; a field that is absent or blank is unknown. */
export type EntryTexts = { readonly [F in EntryField]?: string | undefined };

export interface MeasurementsRead {
  readonly measurements: Measurements;
  readonly notices: readonly EntryNotice[];
}

type EarlierField = "earlierKg" | "earlierAgeMonths";
type Values = { -readonly [F in EntryField]?: EntryValues[F] };

/**
 * All that was typed about one child, as measurements ready for `estimateWeight`.
 *
 * Standing height becomes lying length + 0.7 cm where no lying length is given; where both are given the lying one is
 * used, with a notice if they disagree by more than 2 cm. An earlier weight needs the age then, and the other way round; a notice
 * says when one is missing. Length and arm that only make sense the other way
 * round are an issue with the exchange as its proposal.
 *
 * Returns every issue at once, so that a person mends all fields in one go. Which measurements are enough is for the
 * body model to say: nothing typed at all gives empty measurements.
 *
 * @source who-anthro length = height + 0.7 cm
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readMeasurements } from "@steelyard/core/entry";
 *
 * const read = readMeasurements({ lengthCm: "136", armMm: "190", ageMonths: "9y", sex: "" });
 * assert.deepEqual(read.ok && read.value.measurements, { lengthCm: 136, armMm: 190, ageMonths: 108 });
 *
 * const swapped = readMeasurements({ lengthCm: "190", armMm: "136" });
 * assert.deepEqual(!swapped.ok && swapped.error.map(({ type }) => type), ["fields-swapped"]);
 * ```
 */
export function readMeasurements(
  texts: EntryTexts,
  options: ReadOptions = {},
): Result<MeasurementsRead, readonly EntryIssue[]> {
  const values: Values = {};
  const notices: EntryNotice[] = [];
  const issues: EntryIssue[] = [];
  for (const field in texts)
    readField({ field: field as EntryField, texts, options, values, notices, issues });

  const swapped = findSwap(values);
  if (swapped) issues.push(swapped);
  if (issues.length > 0) return err(issues);
  if (values.earlierKg === undefined && values.earlierAgeMonths === undefined) {
    return ok({ measurements: withLyingLength(values, notices), notices });
  }
  const { earlierKg, earlierAgeMonths, ...others } = values;
  const measurements = withLyingLength(others, notices);
  if (earlierKg !== undefined && earlierAgeMonths !== undefined) {
    const earlier = { kg: earlierKg, ageMonths: earlierAgeMonths };
    return ok({ measurements: { ...measurements, earlier }, notices });
  }
  notices.push(
    earlierKg === undefined
      ? { type: "earlier-incomplete", field: "earlierAgeMonths", missing: "earlierKg" }
      : { type: "earlier-incomplete", field: "earlierKg", missing: "earlierAgeMonths" },
  );
  return ok({ measurements, notices });
}

function readField<F extends EntryField>({
  field,
  texts,
  options,
  values,
  notices,
  issues,
}: {
  field: F;
  texts: EntryTexts;
  options: ReadOptions;
  values: Values;
  notices: EntryNotice[];
  issues: EntryIssue[];
}): void {
  const text = texts[field];
  if (text === undefined) return;
  const entry = readEntry(field, text, options);
  if (entry.ok) {
    (values as Record<F, EntryValues[F]>)[field] = entry.value.value;
    if (entry.value.notices.length > 0) notices.push(...entry.value.notices);
  } else if (entry.error.type !== "empty") issues.push(entry.error);
}

/** Turns a standing height into the lying length, or compares the two where both are given. */
function withLyingLength(values: Omit<Values, EarlierField>, notices: EntryNotice[]): Measurements {
  if (values.standingHeightCm === undefined) return values;
  const { standingHeightCm, ...measurements } = values;
  const fromHeightCm = heightToLength(standingHeightCm);
  const { lengthCm } = measurements;
  if (lengthCm === undefined) {
    notices.push({ type: "length-from-height", standingHeightCm, lengthCm: fromHeightCm });
    return { ...measurements, lengthCm: fromHeightCm };
  }
  const differenceCm = withoutDrift(Math.abs(lengthCm - fromHeightCm));
  if (differenceCm > LENGTHS_AGREE_WITHIN_CM) {
    notices.push({ type: "lengths-disagree", lengthCm, standingHeightCm, differenceCm });
  }
  return measurements;
}

function findSwap({ lengthCm, armMm }: Values): EntryIssue | undefined {
  if (lengthCm === undefined || armMm === undefined) return undefined;
  const isSwapped =
    armMm < SMALLEST_ARM_MM_PER_LENGTH_CM * lengthCm &&
    lengthCm >= SMALLEST_ARM_MM_PER_LENGTH_CM * armMm &&
    isWithin("armMm", lengthCm) &&
    isWithin("lengthCm", armMm);
  if (!isSwapped) return undefined;
  return {
    type: "fields-swapped",
    field: "armMm",
    lengthCm,
    armMm,
    proposals: [{ type: "swap", lengthCm: armMm, armMm: lengthCm }],
  };
}

function isWithin(field: "lengthCm" | "armMm", value: number): boolean {
  return value >= HUMAN_LIMITS[field].low && value <= HUMAN_LIMITS[field].high;
}
