export { type FormulaChild, type PlainFormula, plainFormulas } from "./plain-formulas.ts";
