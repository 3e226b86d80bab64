import type { GridMessages } from "../grid-messages.ts";

export const ENGLISH_GRID: GridMessages = {
  title: "Weight grid",
  subtitle: "Total weight in kg by lying length and arm circumference, sex unknown",
  subtitleWithWaist: "Total weight in kg by lying length, arm and waist circumference, sex unknown",
  range: ({ fromCm, toCm }) => `${fromCm} to ${toCm} cm`,
  length: "length, cm",
  ideal: "ideal, kg",
  arm: "arm circumference, mm",
  waist: "waist, cm",
  alt: "Table of total weight in kg",
  key: "Take the nearest row and the nearest column. Framed: nearest to the ideal weight. Grey: beyond what the body model has seen; do not rely on it, weigh. Empty: no such child is to be expected; measure again.",
  keyWithWaist:
    "Take the block of the nearest length, the nearest row and column. Framed: nearest to the ideal weight. Grey: beyond what the body model has seen; weigh. Empty: the two girths contradict each other; measure again.",
  blockLength: ({ lengthCm }) => `${lengthCm} cm`,
  blockIdeal: ({ kg }) => `ideal ${kg} kg`,
};
