/** The words of the weight grid. */
export interface GridMessages {
  readonly title: string;
  readonly subtitle: string;
  readonly subtitleWithWaist: string;
  range(values: { readonly fromCm: string; readonly toCm: string }): string;
  readonly length: string;
  readonly ideal: string;
  readonly arm: string;
  readonly waist: string;
  readonly alt: string;
  readonly key: string;
  readonly keyWithWaist: string;
  blockLength(values: { readonly lengthCm: string }): string;
  blockIdeal(values: { readonly kg: string }): string;
}
