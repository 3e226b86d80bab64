import { type BodyModel, createBodyModel } from "@steelyard/core/body";
import { fitBodyModels } from "./fit-body-models.ts";
import type { FitChild } from "./fit-child.ts";

export const folds = 5;

/** The fold of a child: a hash of its number, so that a child stays in its fold, with all its visits, when rows come or go. */
export function foldOf({ childId }: FitChild): number {
  // Knuth's multiplicative hash; the high bits are the mixed ones.
  return Math.floor(((Math.imul(childId, 2654435761) >>> 0) / 2 ** 32) * folds);
}

/** For every child the model that was fitted without its fold; a published curve (child 0) is in every fit. */
export function crossValidate(
  children: readonly FitChild[],
  options: { version: string; sourceIds: readonly string[] },
): (child: FitChild) => BodyModel {
  const models = Array.from({ length: folds }, (_, fold) =>
    createBodyModel(
      fitBodyModels(
        children.filter((child) => child.childId === 0 || foldOf(child) !== fold),
        options,
      ),
    ),
  );
  return (child) => models[foldOf(child)] as BodyModel;
}
