import type { BodyReference } from "./body-reference.ts";
import { createIndexedModel, type IndexedModel } from "./indexed-model.ts";

/** The body model: along length, and its twin along age for the child whose length cannot be had. */
export interface BodyModel {
  readonly version: string;
  readonly byLength: IndexedModel;
  readonly byAge: IndexedModel;
}

/**
 * Makes the body model from the two files of coefficients. Throws a `RangeError` when they are of different fits.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { defaultBodyModel } from "@steelyard/core/body";
 *
 * const model = defaultBodyModel(); // createBodyModel with the two files of the fit that ships
 * assert.equal(model.byLength.version, model.byAge.version);
 * ```
 */
export function createBodyModel(references: { byLength: BodyReference; byAge: BodyReference }): BodyModel {
  const { byLength, byAge } = references;
  if (byLength.version !== byAge.version) {
    throw new RangeError(
      `Cannot make a body model as both files must be of one fit: current versions are ${byLength.version} and ${byAge.version}`,
    );
  }
  return {
    version: byLength.version,
    byLength: createIndexedModel(byLength),
    byAge: createIndexedModel(byAge),
  };
}
