export {
  type Centimetres,
  centimetres,
  type Kilograms,
  kilograms,
  type Millimetres,
  type Months,
  millimetres,
  months,
} from "./brands.ts";
export type { Dose, DosePer, DoseUnit } from "./dose.ts";
