import * as v from "valibot";

/** Largest number and finest decimal that the exact arithmetic of the engine takes without running out of room. */
const HIGHEST = 1e6;
const DECIMALS = 6;

export const identifier: v.GenericSchema<string> = v.pipe(
  v.string(),
  v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "must be lower-case words joined by hyphens"),
);

export const text: v.GenericSchema<string> = v.pipe(
  v.string(),
  v.trim(),
  v.minLength(1, "must not be empty"),
);

const decimal = v.pipe(
  v.number(),
  v.finite("must be a finite number"),
  v.maxValue(HIGHEST, `must be at most ${HIGHEST}`),
  v.check(
    (value) => Math.abs(value * 10 ** DECIMALS - Math.round(value * 10 ** DECIMALS)) < 1e-3,
    `must have at most ${DECIMALS} decimals`,
  ),
);

export const positive: v.GenericSchema<number> = v.pipe(decimal, v.gtValue(0, "must be more than 0"));

export const notNegative: v.GenericSchema<number> = v.pipe(decimal, v.minValue(0, "must not be less than 0"));

export const count: v.GenericSchema<number> = v.pipe(
  v.number(),
  v.integer("must be a whole number"),
  v.minValue(1, "must be at least 1"),
);
