import { type BodyModel, estimateWeight, type Measurements, type SiteProfile } from "@steelyard/core/body";
import type { Judged } from "./accuracy.ts";

export interface JudgedRow<T> extends Judged {
  readonly child: T;
}

export interface Judgement<T> {
  readonly rows: readonly JudgedRow<T>[];
  /** Children the model refused: a measurement outside its range. */
  readonly refused: number;
}

/** Estimates every child from the chosen measurements; `measure` gives undefined where one of them is missing. */
export function judge<T extends { readonly weightKg: number }>(given: {
  children: readonly T[];
  measure: (child: T) => Measurements | undefined;
  modelFor: (child: T) => BodyModel;
  site: SiteProfile;
}): Judgement<T> {
  const { site } = given;
  const rows: JudgedRow<T>[] = [];
  let refused = 0;
  for (const child of given.children) {
    const measurements = given.measure(child);
    if (measurements === undefined) continue;
    const estimate = estimateWeight(measurements, { model: given.modelFor(child), site });
    if (!estimate.ok) {
      refused++;
      continue;
    }
    const { totalKg, low95Kg, high95Kg } = estimate.value;
    rows.push({ child, estimateKg: totalKg, low95Kg, high95Kg, trueKg: child.weightKg });
  }
  return { rows, refused };
}
