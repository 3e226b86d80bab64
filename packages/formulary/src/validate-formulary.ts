import type { Formulary } from "@steelyard/core/dosing";
import { err, ok, type Result } from "@steelyard/core/result";
import * as v from "valibot";
import { checkBands } from "./checks/check-bands.ts";
import { checkDevices } from "./checks/check-devices.ts";
import { checkDoses } from "./checks/check-doses.ts";
import { checkMeasurable } from "./checks/check-measurable.ts";
import { checkReferences } from "./checks/check-references.ts";
import { checkSignOff } from "./checks/check-sign-off.ts";
import { checkSources } from "./checks/check-sources.ts";
import { checkUnits } from "./checks/check-units.ts";
import { describeSchemaIssue } from "./describe-schema-issue.ts";
import type { FormularyFault } from "./formulary-fault.ts";
import { formularySchema } from "./schema/formulary-schema.ts";

/** In the order in which a reader goes about them: names, then what they lead to, then the numbers. */
const CHECKS: readonly ((formulary: Formulary) => FormularyFault[])[] = [
  checkReferences,
  checkSources,
  checkUnits,
  checkBands,
  checkDoses,
  checkDevices,
  checkSignOff,
];

/**
 * A formulary from a file, or every fault it has, each with its place, in words for the pharmacist who keeps it.
 *
 * First the shape of every field; where that holds, what the parts mean together: names, sources, units, bands,
 * limits, accepted ranges, volumes. Nothing is half-loaded: one fault refuses the whole.
 *
 * ```ts
 * import { draftFormulary, validateFormulary } from "@steelyard/formulary";
 * import assert from "node:assert/strict";
 * assert.ok(validateFormulary(draftFormulary).ok);
 * const result = validateFormulary({ ...draftFormulary, version: 1 });
 * assert.deepEqual(result.ok || result.error, [{ place: "version", message: "must be text: it is 1" }]);
 * ```
 */
export function validateFormulary(candidate: unknown): Result<Formulary, readonly FormularyFault[]> {
  const parsed = v.safeParse(formularySchema, candidate);
  if (!parsed.success) return err(parsed.issues.map(describeSchemaIssue));
  const faults = CHECKS.flatMap((check) => check(parsed.output));
  if (faults.length > 0) return err(faults);
  // Last, as it runs the engine, which takes the rest for granted.
  const unmeasurable = checkMeasurable(parsed.output);
  return unmeasurable.length === 0 ? ok(parsed.output) : err(unmeasurable);
}
