export {
  type Centimetres,
  centimetres,
  type Days,
  days,
  type Kilograms,
  type KilogramsPerSquareMetre,
  kilograms,
  kilogramsPerSquareMetre,
  type Millimetres,
  type Months,
  millimetres,
  months,
  type SquareMetres,
  squareMetres,
} from "./brands.ts";
export { convertDose, isConvertible } from "./convert-dose.ts";
export type { Dose, DosePer, DoseUnit } from "./dose.ts";
export { formatConcentration } from "./format-concentration.ts";
export { formatNumber } from "./format-number.ts";
export { formatQuantity } from "./format-quantity.ts";
export { formatWeight } from "./format-weight.ts";
export { ENGLISH_NUMBERS, FRENCH_NUMBERS, type NumberStyle } from "./number-style.ts";
export { writeLabel } from "./write-label.ts";
export { writtenKg } from "./written-kg.ts";
