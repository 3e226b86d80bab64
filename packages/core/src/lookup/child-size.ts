import type { Sex } from "../growth/index.ts";
import { requireFinite } from "../growth/require.ts";
import { writtenKg } from "../units/written-kg.ts";
import { type AgeBasis, ageBasis } from "./age-basis.ts";

/** What is known of a child's size, whoever measured or worked it out. */
export interface ChildSizeInput {
  readonly ageMonths?: number | undefined;
  readonly sex?: Sex | undefined;
  /** Lying length, cm. */
  readonly lengthCm?: number | undefined;
  /** Mid-upper-arm circumference, mm. */
  readonly armMm?: number | undefined;
  readonly totalKg: number;
  readonly idealKg?: number | undefined;
}

/** The same with weights as they are written, and the age or what stands in for it. */
export interface ChildSize {
  readonly age?: AgeBasis;
  readonly lengthCm?: number;
  readonly armMm?: number;
  readonly totalKg: number;
  readonly idealKg?: number;
}

/** Throws a `RangeError` that names `task` and the value when a number is not finite or cannot be a child's. */
export function childSize(task: string, input: ChildSizeInput): ChildSize {
  const { ageMonths, sex, lengthCm, armMm, totalKg, idealKg } = input;
  requireFinite(task, { ageMonths, lengthCm, armMm, totalKg, idealKg });
  requirePositive(task, { lengthCm, armMm, totalKg, idealKg });
  if (ageMonths !== undefined && ageMonths < 0) {
    throw new RangeError(`Cannot ${task} as ageMonths must be at least 0: current value is ${ageMonths}`);
  }
  const age = ageBasis({ ageMonths, lengthCm, sex });
  return {
    ...(age !== undefined && { age }),
    ...(lengthCm !== undefined && { lengthCm }),
    ...(armMm !== undefined && { armMm }),
    totalKg: writtenKg(totalKg),
    ...(idealKg !== undefined && { idealKg: writtenKg(idealKg) }),
  };
}

function requirePositive(task: string, values: Readonly<Record<string, number | undefined>>): void {
  for (const [name, value] of Object.entries(values)) {
    if (value !== undefined && value <= 0) {
      throw new RangeError(`Cannot ${task} as ${name} must be more than 0: current value is ${value}`);
    }
  }
}
