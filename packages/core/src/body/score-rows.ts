import type { BodyModel } from "./body-model.ts";
import { estimateWeight } from "./estimate-weight.ts";
import type { Measurements } from "./measurements.ts";
import { normalQuantile } from "./normal-quantile.ts";
import type { SiteProfile } from "./site-profile.ts";
import { cumulativeOfComponents } from "./weight-distribution.ts";

/** A child who was measured and weighed. */
export interface WeighedChild {
  readonly measurements: Measurements;
  /** From a scale, kg. */
  readonly weightKg: number;
}

/** Where a child's scale weight lies in its own estimate. */
export interface ScoredChild {
  /** Normal score of P(weight <= scale weight): 0 in the middle, 1.96 at the upper end of the 95 % interval. */
  readonly score: number;
  /** The expected z of weight, averaged over the components. */
  readonly expectedZ: number;
  readonly estimateKg: number;
  readonly low95Kg: number;
  readonly high95Kg: number;
  readonly weightKg: number;
}

/**
 * Scores every child the model can serve; the others are left out.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { defaultBodyModel, scoreRows, uncalibratedSite } from "@steelyard/core/body";
 * import { centimetres, millimetres } from "@steelyard/core/units";
 *
 * const measurements = { lengthCm: centimetres(136), armMm: millimetres(190) };
 * const options = { model: defaultBodyModel(), site: uncalibratedSite };
 * const [child] = scoreRows([{ measurements, weightKg: 40 }], options);
 * assert.ok(child !== undefined && child.score > 1.96);
 * ```
 */
export function scoreRows(
  rows: readonly WeighedChild[],
  { model, site }: { model: BodyModel; site: SiteProfile },
): readonly ScoredChild[] {
  return rows.flatMap(({ measurements: { scaleKg: _, ...measurements }, weightKg }) => {
    const estimate = estimateWeight(measurements, { model, site });
    if (!estimate.ok || !(weightKg > 0)) return [];
    const { components, totalKg, low95Kg, high95Kg } = estimate.value;
    const p = cumulativeOfComponents(components, weightKg);
    return [
      {
        score: normalQuantile(Math.min(Math.max(p, 1e-9), 1 - 1e-9)),
        expectedZ: components.reduce((sum, { probability, zMean }) => sum + probability * zMean, 0),
        estimateKg: totalKg,
        low95Kg,
        high95Kg,
        weightKg,
      },
    ];
  });
}
