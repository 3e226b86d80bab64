import type { BodyReference } from "@steelyard/core/body";
import { fitBodyModel } from "./fit-body-model.ts";
import type { FitChild } from "./fit-child.ts";
import { ageLayout, lengthLayout } from "./model-indexes.ts";

/** Fits the model along length and its twin along age. */
export function fitBodyModels(
  children: readonly FitChild[],
  options: { version: string; sourceIds: readonly string[] },
): { readonly byLength: BodyReference; readonly byAge: BodyReference } {
  return {
    byLength: fitBodyModel(children, { ...options, layout: lengthLayout }),
    byAge: fitBodyModel(children, { ...options, layout: ageLayout }),
  };
}
