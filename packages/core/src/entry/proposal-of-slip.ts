import type { Slip } from "../body/index.ts";
import type { Proposal } from "./entry-issue.ts";

/**
 * What to offer a person for a slip in the measurements: the number in the unit it was read in, length and arm exchanged, or other numbers.
 * Undefined where there is nothing to offer but to measure again. Applies nothing.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { recogniseSlips } from "@steelyard/core/body";
 * import { proposalOfSlip } from "@steelyard/core/entry";
 * import { centimetres, millimetres } from "@steelyard/core/units";
 *
 * const [slip] = recogniseSlips({ lengthCm: centimetres(136), armMm: millimetres(19) });
 * const proposal = { type: "unit", field: "armMm", typed: 19, from: "cm", value: 190 };
 * assert.deepEqual(slip && proposalOfSlip(slip), proposal);
 * ```
 */
export function proposalOfSlip(slip: Slip): Proposal | undefined {
  const values = slip.changes.flatMap(({ measurement, value }) =>
    value === undefined ? [] : [{ field: measurement, value }],
  );
  const [change] = slip.changes;
  if (values.length === 0 || change === undefined) return undefined;
  if (slip.type === "unit" && values.length === 1) {
    const { measurement: field, given, value = given } = change;
    // "10 years" that were months: the number that was typed is the months.
    return { type: "unit", field, typed: slip.from === "mo" ? value : given, from: slip.from, value };
  }
  const lengthCm = values.find(({ field }) => field === "lengthCm")?.value;
  const armMm = values.find(({ field }) => field === "armMm")?.value;
  if (slip.type === "fields-exchanged" && lengthCm !== undefined && armMm !== undefined)
    return { type: "swap", lengthCm, armMm };
  return { type: "values", values };
}
