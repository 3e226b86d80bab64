import type { SignLine, SignValue } from "../signs/index.ts";
import type { Block } from "./caution-block.ts";
import { ENGLISH_LOOKUP } from "./english-lookup.ts";
import type { LookupCatalogue } from "./lookup-catalogue.ts";
import { writeLookupValue } from "./write-lookup.ts";

/**
 * The heading of the normal signs and what stands under it.
 *
 * ```ts
 * import { signsBlock } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * assert.equal(signsBlock().title, "Normal signs");
 * ```
 */
export function signsBlock(catalogue: LookupCatalogue = ENGLISH_LOOKUP): Block {
  return catalogue.signsBlock;
}

/**
 * The name of a sign: "Systolic pressure, lower limit".
 *
 * ```ts
 * import { describeSign } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * assert.equal(describeSign({ sign: "mean-pressure", kind: "median" }), "Mean arterial pressure, median");
 * ```
 */
export function describeSign(
  { sign, kind }: Pick<SignLine, "sign" | "kind">,
  catalogue: LookupCatalogue = ENGLISH_LOOKUP,
): string {
  return kind === undefined ? catalogue.sign[sign] : `${catalogue.sign[sign]}, ${catalogue.signKind[kind]}`;
}

/**
 * A normal value with its unit: "67 to 103 per minute", "78 mmHg".
 *
 * ```ts
 * import { describeSignValue } from "@steelyard/core/wording";
 * import assert from "node:assert/strict";
 * assert.equal(describeSignValue({ value: 78, unit: "mmHg" }), "78\u00a0mmHg");
 * ```
 */
export function describeSignValue(
  { value, unit }: Pick<SignValue, "value" | "unit">,
  catalogue: LookupCatalogue = ENGLISH_LOOKUP,
): string {
  return writeLookupValue({ value, unit, perMinute: catalogue.perMinute }, catalogue.values);
}
