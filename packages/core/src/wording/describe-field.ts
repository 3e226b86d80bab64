import { ENGLISH } from "./english.ts";
import type { FieldName, MessageCatalogue } from "./message-catalogue.ts";

/**
 * The name of a field within a sentence: "arm circumference".
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { describeField } from "@steelyard/core/wording";
 * assert.equal(describeField("armMm"), "arm circumference");
 * ```
 */
export function describeField(field: FieldName, catalogue: MessageCatalogue = ENGLISH): string {
  return catalogue["field.name"]({ field });
}
