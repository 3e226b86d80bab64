/** A measurement the body model may be given. */
export type BodyInput =
  | "lengthCm"
  | "armMm"
  | "waistCm"
  | "thighCm"
  | "calfCm"
  | "headCm"
  | "sex"
  | "ageMonths"
  | "build"
  | "carerKg";

/** Where a method's estimates come from. */
export type Method =
  /** A column of the file. */
  | { readonly type: "column"; readonly column: string }
  /** The body model, given these measurements of each child. */
  | { readonly type: "body"; readonly inputs: readonly BodyInput[] }
  /** A plain published formula, by the id of its source. */
  | { readonly type: "formula"; readonly sourceId: string };

/** What a method made of every child of a table. */
export interface MethodEstimates {
  /** Short and unique: a key for tables and files. */
  readonly id: string;
  readonly method: Method;
  /** NaN where the method gives none. */
  readonly estimateKg: Float64Array;
  /** The 95 % range, where the method has one. */
  readonly low95Kg?: Float64Array;
  readonly high95Kg?: Float64Array;
  /** Children it gives an estimate for. */
  readonly served: number;
}
