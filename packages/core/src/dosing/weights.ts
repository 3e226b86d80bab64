import type { Kilograms } from "../units/index.ts";

/** Which weight a dose rule multiplies. */
export type Basis = "total" | "ideal" | "adjusted" | "lean";

/**
 * The weights of one child, kg, whoever made them. `ideal`, `adjusted` and `lean` are absent when they
 * cannot be had (no length); a rule that needs one then says so instead of taking another.
 */
export interface Weights {
  readonly totalKg: Kilograms;
  readonly idealKg?: Kilograms;
  readonly adjustedKg?: Kilograms;
  readonly leanKg?: Kilograms;
  /** P(true total weight <= kg); absent when the weight was read from a scale. */
  readonly cumulative?: (kg: number) => number;
}
