/** The words of the length strip. */
export interface StripMessages {
  readonly title: string;
  readonly subtitle: string;
  /** On the dashed line. */
  readonly idealLine: string;
  /** At the left end of a scale of arms. */
  readonly armScale: string;
  kilograms(written: string): string;
  chartAlt(values: { readonly fromCm: number; readonly toCm: number }): string;
  readonly marginLength: string;
  readonly marginIdeal: string;
  readonly marginRange: string;
  /** "−12 +17 %". */
  range(values: { readonly below: string; readonly above: string }): string;
  readonly headLine: string;
  readonly headEnd: string;
  readonly footEnd: string;
  section(values: {
    readonly page: number;
    readonly pages: number;
    readonly fromCm: string;
    readonly toCm: string;
  }): string;
  cutAndJoin(values: { readonly atCm: string; readonly page: number }): string;
  glueNext(values: { readonly page: number }): string;
  readonly stepsTitle: string;
  readonly steps: readonly string[];
  readonly childAlt: string;
  readonly postureTitle: string;
  readonly postures: readonly string[];
  readonly notForTitle: string;
  readonly notFor: string;
  readonly assemblyTitle: string;
  assembly(values: { readonly pages: number; readonly firstJoinCm: string }): string;
  readonly assemblyAlt: string;
  readonly legendTitle: string;
  readonly legend: {
    readonly contour: string;
    readonly arm: string;
    readonly ideal: string;
    readonly beyond: string;
    readonly margin: string;
  };
  example(values: {
    readonly lengthCm: string;
    readonly armMm: string;
    readonly lineKg: string;
    readonly low: string;
    readonly high: string;
    readonly idealKg: string;
  }): string;
}
