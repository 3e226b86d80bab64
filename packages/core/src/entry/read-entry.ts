import { ok, type Result } from "../result.ts";
import { centimetres, kilograms, millimetres, months } from "../units/index.ts";
import type { EntryField, EntryValues, QuantityField } from "./entry-field.ts";
import type { EntryIssue, EntryNotice } from "./entry-issue.ts";
import { isChoice, readChoice } from "./read-choice.ts";
import { type ReadOptions, readQuantity } from "./read-quantity.ts";

/** A typed text, understood. */
export interface Entry<T> {
  readonly value: T;
  readonly notices: readonly EntryNotice[];
}

type Brands = { readonly [F in QuantityField]: (value: number) => EntryValues[F] };

const BRANDS: Brands = {
  lengthCm: centimetres,
  standingHeightCm: centimetres,
  ulnaCm: centimetres,
  kneeHeightCm: centimetres,
  tibiaCm: centimetres,
  armMm: millimetres,
  waistCm: centimetres,
  thighCm: centimetres,
  calfCm: centimetres,
  headCm: centimetres,
  ageMonths: months,
  carerKg: kilograms,
  earlierKg: kilograms,
  earlierAgeMonths: months,
  scaleKg: kilograms,
};

/**
 * What a person typed into one field, as a value in the unit of that field.
 *
 * A number may have a decimal point or comma, spaces around it and its own unit ("1.36 m", "4 ft 5 in",
 * "9 y 3 mo"); a unit other than the field's own is converted and a notice says so. An age needs its unit unless
 * `ageUnitKnown`. Nothing is guessed: where a text has two readings or a number is no possible child, the issue
 * carries `proposals` to offer.
 *
 * Returns an `EntryIssue` for every text that cannot be taken; never throws and never yields a non-finite number.
 *
 * @source nhanes the widest limits, see `human-limits.ts`
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readEntry } from "@steelyard/core/entry";
 *
 * const arm = readEntry("armMm", "19 cm");
 * assert.equal(arm.ok && arm.value.value, 190);
 *
 * const length = readEntry("lengthCm", "1,36");
 * assert.equal(!length.ok && length.error.type, "out-of-limits");
 * assert.deepEqual(!length.ok && length.error.type === "out-of-limits" && length.error.proposals, [
 *   { type: "unit", field: "lengthCm", typed: 1.36, from: "m", value: 136 },
 *   { type: "unit", field: "lengthCm", typed: 1.36, from: "ft", value: 41.4528 },
 * ]);
 * ```
 */
export function readEntry<F extends EntryField>(
  field: F,
  text: string,
  options: ReadOptions = {},
): Result<Entry<EntryValues[F]>, EntryIssue> {
  if (isChoice(field)) {
    const choice = readChoice(field, text);
    return choice.ok ? ok({ value: choice.value as EntryValues[F], notices: [] }) : choice;
  }
  const quantity = readQuantity(field as QuantityField, text, options);
  if (!quantity.ok) return quantity;
  const { value, notices } = quantity.value;
  return ok({ value: BRANDS[field as QuantityField](value) as EntryValues[F], notices });
}
