/** The words of the length strip. */
export interface StripMessages {
  readonly title: string;
  /** On the dashed line. */
  readonly idealLine: string;
  /** At the left end of a scale of arms. */
  readonly armScale: string;
  kilograms(written: string): string;
  chartAlt(values: { readonly fromCm: number; readonly toCm: number }): string;
}
