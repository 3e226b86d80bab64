/** The shape of a catalogue with any words in it: what a second language has to fill. */
export type Words<T> = T extends string
  ? string
  : T extends (...values: infer Values) => string
    ? (...values: Values) => string
    : T extends object
      ? { readonly [Key in keyof T]: Words<T[Key]> }
      : T;
