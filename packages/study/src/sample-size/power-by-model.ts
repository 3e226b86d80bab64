import {
  type BodyModel,
  defaultBodyModel,
  type Measurements,
  type SiteProfile,
  uncalibratedSite,
  weighChild,
} from "@steelyard/core/body";
import { err, ok, type Result } from "@steelyard/core/result";
import { createGenerator, type Generator } from "../bootstrap/create-generator.ts";
import { scoreInterval } from "../comparison/score-interval.ts";

export interface PowerByModelInput {
  /** Children like those of the study: what will be measured of each. A study draws from them with replacement. */
  readonly children: readonly Measurements[];
  /** How many the study shall weigh. */
  readonly size: number;
  /** Limit of the error, %, and the share to prove. */
  readonly percent: number;
  readonly target: number;
  readonly seed: number;
  /** Simulated studies; 1,000 when absent. */
  readonly studies?: number;
  readonly model?: BodyModel;
  readonly site?: SiteProfile;
}

export interface PowerByModel {
  /** Share of simulated studies whose Wilson interval lies above the target. */
  readonly power: number;
  /** The share within the limit that the model expects of such children. */
  readonly expected: number;
  readonly served: number;
  readonly leftOut: number;
}

export type PowerIssue = { readonly type: "no-child-served"; readonly children: number };

/**
 * Power of a study to prove a share within a limit (PW10, PW20), by simulation from the body model itself.
 *
 * Every child's weight is drawn from its own estimated distribution, the estimate is compared with it, and the study succeeds when the lower end of
 * the 95 % Wilson interval of the share lies above the target. That rests on the model being right about the children; hand over the site
 * profile that is thought to hold. The same seed gives the same figure.
 *
 * `size` and `studies`: whole numbers from 1, `target` in (0, 1), `percent` above 0; a `RangeError` otherwise. Fails with `no-child-served`.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { centimetres, millimetres } from "@steelyard/core/units";
 * import { powerByModel } from "@steelyard/study/sample-size";
 *
 * const children = [{ lengthCm: centimetres(100), armMm: millimetres(155) }];
 * const power = powerByModel({ children, size: 100, percent: 20, target: 0.5, seed: 1, studies: 50 });
 * assert.ok(power.ok && power.value.power > 0.9);
 * ```
 *
 * @source newcombe1998
 */
export function powerByModel({
  children,
  size,
  percent,
  target,
  seed,
  studies = 1000,
  model = defaultBodyModel(),
  site = uncalibratedSite,
}: PowerByModelInput): Result<PowerByModel, PowerIssue> {
  for (const [name, value] of Object.entries({ size, studies }))
    if (!Number.isInteger(value) || value < 1)
      throw new RangeError(
        `Cannot simulate power as ${name} must be a whole number from 1: current value is ${value}`,
      );
  if (!(target > 0 && target < 1 && percent > 0))
    throw new RangeError(
      `Cannot simulate power as target must be in (0, 1) and percent above 0: current value is ${target}, ${percent}`,
    );
  const chances = children.flatMap((child) => {
    const { scaleKg: _, ...measurements } = child;
    const weighed = weighChild({ measurements, model, site });
    const cumulative = weighed.ok ? weighed.value.weights.cumulative : undefined;
    if (!weighed.ok || cumulative === undefined) return [];
    return [chanceWithin({ totalKg: weighed.value.weights.totalKg, cumulative, percent })];
  });
  if (chances.length === 0) return err({ type: "no-child-served", children: children.length });
  const generator = createGenerator(seed);
  let proved = 0;
  for (let study = 0; study < studies; study++)
    if (scoreInterval(drawStudy({ chances, size, generator }), size, 0.95).low > target) proved++;
  return ok({
    power: proved / studies,
    expected: chances.reduce((sum, chance) => sum + chance, 0) / chances.length,
    served: chances.length,
    leftOut: children.length - chances.length,
  });
}

/** The chance that a child's estimate lies within the limit of a weight drawn from its own distribution: est / w in [1 - p, 1 + p]. */
function chanceWithin({
  totalKg,
  cumulative,
  percent,
}: {
  readonly totalKg: number;
  readonly cumulative: (kg: number) => number;
  readonly percent: number;
}): number {
  const above = percent < 100 ? cumulative(totalKg / (1 - percent / 100)) : 1;
  return Math.max(0, above - cumulative(totalKg / (1 + percent / 100)));
}

function drawStudy(given: { chances: readonly number[]; size: number; generator: Generator }): number {
  const { chances, size, generator } = given;
  let within = 0;
  for (let i = 0; i < size; i++) {
    const chance = chances[Math.floor(generator.uniform() * chances.length)] as number;
    if (generator.uniform() < chance) within++;
  }
  return within;
}
