/** The words that every page carries. */
export interface FrameMessages {
  readonly printAtFull: string;
  readonly measureRulers: string;
  readonly millimetres: string;
  readonly inches: string;
  readonly rulerAcross: string;
  readonly rulerAlong: string;
  readonly draft: string;
  readonly draftLong: string;
  pageOf(values: { readonly page: number; readonly pages: number }): string;
  versions(values: { readonly software: string; readonly model: string }): string;
  madeAndExpires(values: { readonly madeOn: string; readonly expiresOn: string }): string;
  readonly notCalibrated: string;
  calibrated(values: {
    readonly name: string;
    readonly children: string;
    readonly createdOn: string;
    readonly signed: boolean;
  }): string;
  readonly noFormulary: string;
  formularyUnsigned(values: { readonly title: string; readonly version: string }): string;
  formularySigned(values: {
    readonly title: string;
    readonly version: string;
    readonly name: string;
    readonly role: string;
    readonly date: string;
  }): string;
  /** Follows it where somebody else reviewed it as well. */
  secondSigner(values: { readonly name: string; readonly role: string; readonly date: string }): string;
  fingerprint(values: { readonly short: string }): string;
  readonly fingerprintCode: string;
  cautions(values: { readonly title: string; readonly text: string }): string;
  /** In which language the words of the formulary are; nothing where that is this one. */
  readonly formularyWords: string;
}
