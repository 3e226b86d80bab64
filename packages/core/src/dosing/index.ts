export type { Dose, DoseUnit, Robustness, SheetLine, SourceRef } from "./sheet-line.ts";
export type { Basis, Weights } from "./weights.ts";
