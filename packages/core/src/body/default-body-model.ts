import { type BodyModel, createBodyModel } from "./body-model.ts";
import type { BodyReference } from "./body-reference.ts";
import byAge from "./reference/by-age.json" with { type: "json" };
import byLength from "./reference/by-length.json" with { type: "json" };

let model: BodyModel | undefined;

/**
 * The body model that ships. Made once, at first use.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { defaultBodyModel } from "@steelyard/core/body";
 *
 * assert.equal(defaultBodyModel(), defaultBodyModel());
 * ```
 */
export function defaultBodyModel(): BodyModel {
  model ??= createBodyModel({
    byLength: byLength as unknown as BodyReference,
    byAge: byAge as unknown as BodyReference,
  });
  return model;
}
