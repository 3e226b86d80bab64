import { withoutDrift } from "../units/without-drift.ts";
import type { LookupQuantity, LookupStep, LookupUnit } from "./lookup-step.ts";

/** One row of a table: holds for [low, high). */
export interface Band<Value> {
  readonly low: number;
  readonly high?: number;
  readonly value: Value;
}

/** The row that holds `at`, with its step; nothing outside the table. */
export function bandAt<Value>(
  bands: readonly Band<Value>[],
  by: LookupQuantity,
  at: number,
): { readonly value: Value; readonly step: LookupStep } | undefined {
  const band = bands.find(({ low, high }) => at >= low && (high === undefined || at < high));
  if (band === undefined) return undefined;
  const { low, high, value } = band;
  const step: LookupStep = { step: "band", by, value: at, low, ...(high !== undefined && { high }) };
  return { value, step };
}

export interface LinearRule {
  readonly by: LookupQuantity;
  readonly times?: number;
  readonly over?: number;
  readonly plus?: number;
  readonly unit: LookupUnit;
}

/** value x times / over + plus, freed of the drift of binary arithmetic. */
export function linear(rule: LinearRule, value: number): Extract<LookupStep, { step: "linear" }> {
  const { times = 1, over = 1, plus = 0 } = rule;
  return { step: "linear", ...rule, value, result: withoutDrift((value * times) / over + plus) };
}

/** The nearest of the sizes that are made; of two as near, the smaller. */
export function nearestOf(sizes: readonly number[], exact: number): number {
  return sizes.reduce((best, size) => (Math.abs(size - exact) < Math.abs(best - exact) ? size : best));
}

/** The largest of the sizes that is not above; the smallest where all are. Sizes ascend. */
export function atMost(sizes: readonly number[], exact: number): number {
  return sizes.findLast((size) => size <= exact) ?? (sizes[0] as number);
}

/** A volume as it is measured: whole mL, under 10 mL to 0.1 mL. */
export function measurableMl(ml: number): number {
  return ml < 10 ? Math.round(ml * 10) / 10 : Math.round(ml);
}
