/**
 * Numbers that carry their unit in the type, so that a length in centimetres cannot enter a slot for an arm
 * in millimetres. This file holds the only casts: `centimetres(136)` is how a plain number gets its unit.
 */
declare const unit: unique symbol;

type Branded<U extends string> = number & { readonly [unit]: U };

export type Centimetres = Branded<"cm">;
export type Millimetres = Branded<"mm">;
export type Kilograms = Branded<"kg">;
export type Months = Branded<"month">;
export type Days = Branded<"day">;
export type SquareMetres = Branded<"m2">;
export type KilogramsPerSquareMetre = Branded<"kg/m2">;

function finite(value: number, name: string): number {
  if (!Number.isFinite(value)) {
    throw new RangeError(`Cannot make ${name} as value must be a finite number: current value is ${value}`);
  }
  return value;
}

/**
 * A length in centimetres. Throws a `RangeError` on NaN and infinity.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { centimetres } from "@steelyard/core/units";
 *
 * assert.equal(centimetres(136), 136);
 * ```
 */
export function centimetres(value: number): Centimetres {
  return finite(value, "centimetres") as Centimetres;
}

/**
 * A circumference in millimetres. Throws a `RangeError` on NaN and infinity.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { millimetres } from "@steelyard/core/units";
 *
 * assert.equal(millimetres(190), 190);
 * ```
 */
export function millimetres(value: number): Millimetres {
  return finite(value, "millimetres") as Millimetres;
}

/**
 * A weight in kilograms. Throws a `RangeError` on NaN and infinity.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { kilograms } from "@steelyard/core/units";
 *
 * assert.equal(kilograms(28.1), 28.1);
 * ```
 */
export function kilograms(value: number): Kilograms {
  return finite(value, "kilograms") as Kilograms;
}

/**
 * An age in months, fractions allowed. Throws a `RangeError` on NaN and infinity.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { months } from "@steelyard/core/units";
 *
 * assert.throws(() => months(Number.NaN), RangeError);
 * ```
 */
export function months(value: number): Months {
  return finite(value, "months") as Months;
}

/**
 * An age in days, fractions allowed. Throws a `RangeError` on NaN and infinity.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { days } from "@steelyard/core/units";
 *
 * assert.equal(days(731), 731);
 * assert.throws(() => days(Number.NaN), RangeError);
 * ```
 */
export function days(value: number): Days {
  return finite(value, "days") as Days;
}

/**
 * A body surface area in square metres. Throws a `RangeError` on NaN and infinity.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { squareMetres } from "@steelyard/core/units";
 *
 * assert.equal(squareMetres(0.45), 0.45);
 * assert.throws(() => squareMetres(Number.NaN), RangeError);
 * ```
 */
export function squareMetres(value: number): SquareMetres {
  return finite(value, "square metres") as SquareMetres;
}

/**
 * A body mass index in kg/m2. Throws a `RangeError` on NaN and infinity.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { kilogramsPerSquareMetre } from "@steelyard/core/units";
 *
 * assert.equal(kilogramsPerSquareMetre(15.3), 15.3);
 * assert.throws(() => kilogramsPerSquareMetre(Number.NaN), RangeError);
 * ```
 */
export function kilogramsPerSquareMetre(value: number): KilogramsPerSquareMetre {
  return finite(value, "kilograms per square metre") as KilogramsPerSquareMetre;
}
