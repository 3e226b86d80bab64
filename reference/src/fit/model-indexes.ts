import {
  type ModelIndex,
  type Quantity,
  quantities,
  quantityValue,
  type SplineBasis,
} from "@steelyard/core/body";

/** How one of the two models is laid out: what it runs along, and on which basis. */
export interface IndexLayout {
  readonly index: ModelIndex;
  readonly basis: SplineBasis;
  /** Every other quantity, the weight first. */
  readonly quantities: readonly Quantity[];
}

const lowest = { lengthCm: 45, ageMonths: 0 };
const highest = { lengthCm: 205, ageMonths: 216 };

/** Along lying length: twenty-four equal steps in ln length; the penalty chooses how many are really used. */
export const lengthLayout: IndexLayout = {
  index: {
    quantity: "length",
    low: lowest.lengthCm,
    high: highest.lengthCm,
    fittedLow: 50,
    fittedHigh: 200,
    step: 0.5,
  },
  basis: { low: Math.log(lowest.lengthCm), high: Math.log(highest.lengthCm), intervals: 24 },
  quantities: quantities.filter((quantity) => quantity !== "length"),
};

/** Along age, counted from conception: twenty-four steps, since growth slows fast after birth. */
export const ageLayout: IndexLayout = {
  index: {
    quantity: "age",
    low: quantityValue("ageMonths", lowest.ageMonths),
    high: quantityValue("ageMonths", highest.ageMonths),
    fittedLow: quantityValue("ageMonths", lowest.ageMonths),
    fittedHigh: quantityValue("ageMonths", highest.ageMonths),
    step: 0.5,
  },
  basis: {
    low: Math.log(quantityValue("ageMonths", lowest.ageMonths)),
    high: Math.log(quantityValue("ageMonths", highest.ageMonths)),
    intervals: 24,
  },
  quantities: quantities.filter((quantity) => quantity !== "age"),
};
