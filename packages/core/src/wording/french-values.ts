import { FRENCH_NUMBERS } from "../units/index.ts";
import type { ValueWords } from "./value-words.ts";

export const FRENCH_VALUES: ValueWords = {
  numbers: FRENCH_NUMBERS,
  span: (low, high) => `${low} à ${high}`,
  any: "tous",
  from: (low) => `à partir de ${low}`,
  under: (high) => `moins de ${high}`,
  fromToUnder: (low, high) => `de ${low} à moins de ${high}`,
  age: {
    day: { one: "jour", other: "jours" },
    month: { one: "mois", other: "mois" },
    year: { one: "an", other: "ans" },
  },
  size: (size) => `taille\u00a0${size}`,
};
