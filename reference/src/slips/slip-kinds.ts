import type { Measurements, SlipName } from "@steelyard/core/body";

/** One number of a child with a slip in it. */
export interface Slipped {
  readonly measurement: SlipName;
  readonly value: number;
  /** How far from the truth a right correction may be: what was lost in writing the number. */
  readonly tolerance: number;
}

/** A way of getting a number wrong. */
export interface SlipWay {
  readonly kind: string;
  readonly way: string;
  /** The numbers that change; undefined where the row cannot have this slip. */
  readonly slip: (measurements: Measurements, uniform: () => number) => readonly Slipped[] | undefined;
}

const inch = 2.54;
const pound = 0.45359237;

/** `scale` units of what was read make one of what was asked for; written to `step`. */
function inUnit(kind: string, way: string, measurement: SlipName, scale: number, step: number): SlipWay {
  return {
    kind,
    way,
    slip: (measurements) => {
      const truth = measurements[measurement];
      if (truth === undefined) return undefined;
      const value = rounded(truth * scale, step);
      return [{ measurement, value, tolerance: (step / scale) * 0.5001 }];
    },
  };
}

function exchanged(kind: string, way: string, first: SlipName, second: SlipName): SlipWay {
  return {
    kind,
    way,
    slip: (measurements) => {
      const [one, other] = [measurements[first], measurements[second]];
      if (one === undefined || other === undefined) return undefined;
      return [
        { measurement: first, value: other, tolerance: 1e-6 },
        { measurement: second, value: one, tolerance: 1e-6 },
      ];
    },
  };
}

function rounded(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toPrecision(12));
}

const kind = {
  armCm: "arm read in cm",
  armInches: "arm read in inches",
  lengthMetric: "length read in m or mm",
  lengthInches: "length read in inches or feet",
  waist: "waist read in inches or mm",
  weight: "weight read in pounds or grams",
  age: "age in years for months, or the reverse",
  decimal: "decimal point moved",
  girths: "length and arm, or waist and arm, exchanged",
  weightLength: "length and weight exchanged",
} as const;

/** The ten kinds that count, each with its ways. Inches and pounds are exact by definition. */
export const countedWays: readonly SlipWay[] = [
  inUnit(kind.armCm, "arm in cm", "armMm", 0.1, 0.1),
  inUnit(kind.armInches, "arm in inches, to 0.1", "armMm", 0.1 / inch, 0.1),
  inUnit(kind.lengthMetric, "length in m, to 0.01", "lengthCm", 0.01, 0.01),
  inUnit(kind.lengthMetric, "length in mm", "lengthCm", 10, 1),
  inUnit(kind.lengthInches, "length in inches, to 0.5", "lengthCm", 1 / inch, 0.5),
  inUnit(kind.lengthInches, "length in feet, to 0.01", "lengthCm", 1 / (12 * inch), 0.01),
  inUnit(kind.waist, "waist in inches, to 0.5", "waistCm", 1 / inch, 0.5),
  inUnit(kind.waist, "waist in mm", "waistCm", 10, 1),
  inUnit(kind.weight, "weight in pounds, to 0.1", "scaleKg", 1 / pound, 0.1),
  inUnit(kind.weight, "weight in grams", "scaleKg", 1000, 1),
  {
    kind: kind.age,
    way: "completed years as months, from 1 year on",
    slip: ({ ageMonths }) => {
      if (ageMonths === undefined || ageMonths < 12) return undefined;
      return [{ measurement: "ageMonths", value: Math.floor(ageMonths / 12), tolerance: 12 }];
    },
  },
  {
    kind: kind.age,
    way: "completed months as years, 1 month to under 5 years",
    slip: ({ ageMonths }) => {
      if (ageMonths === undefined || ageMonths < 1 || ageMonths >= 60) return undefined;
      return [{ measurement: "ageMonths", value: Math.floor(ageMonths) * 12, tolerance: 1 }];
    },
  },
  inUnit(kind.decimal, "length, a tenth", "lengthCm", 0.1, 0.01),
  inUnit(kind.decimal, "arm, ten times", "armMm", 10, 1),
  inUnit(kind.decimal, "weight, ten times", "scaleKg", 10, 1),
  inUnit(kind.decimal, "weight, a tenth", "scaleKg", 0.1, 0.01),
  exchanged(kind.girths, "length and arm", "lengthCm", "armMm"),
  exchanged(kind.girths, "waist and arm", "waistCm", "armMm"),
  exchanged(kind.weightLength, "length and weight", "lengthCm", "scaleKg"),
];

/** Slips that often leave a plausible child, told apart only as far as the other measurements reach. They do not count. */
export const otherWays: readonly SlipWay[] = (["lengthCm", "armMm", "scaleKg"] as const).flatMap(
  (measurement) => [
    {
      kind: "two digits exchanged",
      way: `${measurement}: two neighbouring digits exchanged`,
      slip: digitSlip(measurement, (digits, i) =>
        [...digits.slice(0, i), digits[i + 1], digits[i], ...digits.slice(i + 2)].join(""),
      ),
    },
    {
      kind: "one digit misread",
      way: `${measurement}: one digit misread`,
      slip: digitSlip(measurement, (digits, i, uniform) =>
        [...digits.slice(0, i), Math.floor(uniform() * 10), ...digits.slice(i + 1)].join(""),
      ),
    },
  ],
);

function digitSlip(
  measurement: SlipName,
  alter: (digits: readonly string[], i: number, uniform: () => number) => string,
): SlipWay["slip"] {
  return (measurements, uniform) => {
    const truth = measurements[measurement];
    if (truth === undefined) return undefined;
    const whole = String(Math.round(truth));
    if (whole.length < 2) return undefined;
    const i = Math.floor(uniform() * (whole.length - 1));
    const value = Number(alter([...whole], i, uniform));
    // Not a slip when the digits are alike; a leading nought nobody writes.
    if (value === Number(whole) || String(value).length < whole.length) return undefined;
    return [{ measurement, value, tolerance: 0.5001 }];
  };
}
