import type { Interval } from "../accuracy/interval.ts";
import { type PooledEffect, type PoolOptions, poolEffects } from "./pool-effects.ts";
import type { MethodSummary, SiteSummary } from "./site-summary.ts";
import type { StudyEffect } from "./study-effect.ts";

/** One site's own figure on the scale of the forest plot. */
export interface SiteFigure extends Interval {
  readonly site: string;
  readonly children: number;
  /** Share in the pooled figure, 0 to 1. */
  readonly share: number;
}

/** A figure over several sites, all in %: what a forest plot shows. */
export interface PooledFigure {
  readonly sites: readonly SiteFigure[];
  readonly pooled: Interval;
  readonly prediction?: { readonly low: number; readonly high: number };
  /** As computed, on the scale of pooling (logits for shares). */
  readonly effect: PooledEffect;
}

export interface PooledMethod {
  readonly method: string;
  readonly children: number;
  readonly meanErrorPercent: PooledFigure;
  readonly within10Percent: PooledFigure;
  readonly within20Percent: PooledFigure;
}

const Z95 = 1.959963984540054;
const logit = (p: number): number => Math.log(p / (1 - p));
const percentOfLogit = (x: number): number => 100 / (1 + Math.exp(-x));

/**
 * Pools the accuracy of every method over sites: mean percentage error as it is, PW10 and PW20 as logits.
 *
 * Only sums enter, so summaries handed over by sites give exactly what their rows would. A share of none or all takes half a child to
 * both sides. Sites enter in the order of their names, so the order of files does not matter. Methods that fewer than two sites have are left
 * out, and a site whose errors do not vary at all is too for the mean.
 *
 * `summaries`: sites with different names, otherwise a `RangeError`.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { poolSites, summariseSite } from "@steelyard/study/pooling";
 *
 * const trueKg = Float64Array.of(10, 20, 30, 40);
 * const methods = [{ method: "new", estimateKg: Float64Array.of(11, 20, 39, 41) }];
 * const sites = ["north", "south"].map((site) => summariseSite({ site, trueKg, methods }));
 * assert.equal(poolSites(sites)[0]?.within10Percent.pooled.value.toFixed(1), "75.0");
 * ```
 *
 * @source viechtbauer2005
 */
export function poolSites(
  summaries: readonly SiteSummary[],
  options: PoolOptions = {},
): readonly PooledMethod[] {
  const names = summaries.map(({ site }) => site);
  if (new Set(names).size < names.length)
    throw new RangeError(`Cannot pool sites as their names must differ: current value is ${names}`);
  const sorted = [...summaries].sort((a, b) => (a.site < b.site ? -1 : 1));
  const methods = [...new Set(sorted.flatMap((summary) => summary.methods.map(({ method }) => method)))];
  return methods.flatMap((method) => {
    const own = sorted.flatMap((summary) => {
      const found = summary.methods.find((candidate) => candidate.method === method);
      return found === undefined ? [] : [{ site: summary.site, summary: found }];
    });
    const mean = pool(
      own.filter(({ summary }) => summary.sdErrorPercent > 0),
      options,
      meanEffect,
      (x) => x,
    );
    const within10 = pool(own, options, shareEffect("within10"), percentOfLogit);
    const within20 = pool(own, options, shareEffect("within20"), percentOfLogit);
    if (mean === undefined || within10 === undefined || within20 === undefined) return [];
    return [
      {
        method,
        children: own.reduce((sum, { summary }) => sum + summary.children, 0),
        meanErrorPercent: mean,
        within10Percent: within10,
        within20Percent: within20,
      },
    ];
  });
}

function meanEffect({ meanErrorPercent, sdErrorPercent, children }: MethodSummary): StudyEffect {
  return { effect: meanErrorPercent, variance: sdErrorPercent ** 2 / children };
}

function shareEffect(field: "within10" | "within20"): (summary: MethodSummary) => StudyEffect {
  return ({ [field]: within, children }) => {
    const half = within === 0 || within === children ? 0.5 : 0;
    const inside = within + half;
    const outside = children - within + half;
    return { effect: logit(inside / (inside + outside)), variance: 1 / inside + 1 / outside };
  };
}

function pool(
  own: readonly { site: string; summary: MethodSummary }[],
  options: PoolOptions,
  effectOf: (summary: MethodSummary) => StudyEffect,
  back: (x: number) => number,
): PooledFigure | undefined {
  if (own.length < 2) return undefined;
  const effects = own.map(({ summary }) => effectOf(summary));
  const effect = poolEffects(effects, options);
  const onScale = ({ value, low, high }: Interval): Interval => ({
    value: back(value),
    low: back(low),
    high: back(high),
  });
  return {
    sites: own.map(({ site, summary }, i) => {
      const { effect: value, variance } = effects[i] as StudyEffect;
      const half = Z95 * Math.sqrt(variance);
      return {
        site,
        children: summary.children,
        share: effect.shares[i] as number,
        ...onScale({ value, low: value - half, high: value + half }),
      };
    }),
    pooled: onScale(effect.pooled),
    ...(effect.prediction && {
      prediction: { low: back(effect.prediction.low), high: back(effect.prediction.high) },
    }),
    effect,
  };
}
