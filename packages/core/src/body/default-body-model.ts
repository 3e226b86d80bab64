import { type BodyModel, createBodyModel } from "./body-model.ts";
import type { BodyReference } from "./body-reference.ts";
import nhanes from "./reference/nhanes.json" with { type: "json" };

let model: BodyModel | undefined;

/** The body model that ships: fitted to NHANES, 2 months to under 18 years. Made once, at first use. */
export function defaultBodyModel(): BodyModel {
  model ??= createBodyModel(nhanes as unknown as BodyReference);
  return model;
}
