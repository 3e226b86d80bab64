export { type Centimetres, centimetres, type Kilograms, kilograms, type Millimetres, millimetres, type Months, months } from "./brands.ts";
