import { type BodyModel, createBodyModel } from "@steelyard/core/body";
import { type FitOptions, fitBodyModel } from "./fit-body-model.ts";
import type { FitChild } from "./select-children.ts";

export const folds = 5;

/** The fold of a child: a hash of the sequence number, so that a child stays in its fold when rows come or go. */
export function foldOf({ seqn }: FitChild): number {
  // Knuth's multiplicative hash; the high bits are the mixed ones.
  return Math.floor(((Math.imul(seqn, 2654435761) >>> 0) / 2 ** 32) * folds);
}

/** For every child the model that was fitted without its fold. */
export function crossValidate(
  children: readonly FitChild[],
  options: FitOptions,
): (child: FitChild) => BodyModel {
  const models = Array.from({ length: folds }, (_, fold) =>
    createBodyModel(
      fitBodyModel(
        children.filter((child) => foldOf(child) !== fold),
        options,
      ),
    ),
  );
  return (child) => models[foldOf(child)] as BodyModel;
}
