import type { Basis } from "@steelyard/core/dosing";

/** The words of the dose booklet. */
export interface BookletMessages {
  readonly title: string;
  readonly contentsTitle: string;
  readonly how: string;
  step(values: { readonly from: string; readonly to: string }): string;
  computedFor(values: { readonly kg: string; readonly lengthCm: string }): string;
  readonly tabUnit: string;
  readonly pageColumn: string;
  readonly weightColumn: string;
  readonly basis: Readonly<Record<Basis, string>>;
  volume(values: { readonly ml: string; readonly strength: string }): string;
  dilute(values: {
    readonly take: string;
    readonly strength: string;
    readonly add: string;
    readonly diluent: string;
    readonly result: string;
  }): string;
  addTo(values: { readonly ml: string; readonly diluent: string }): string;
  rate(values: { readonly mlPerH: string; readonly concentration: string }): string;
  further(values: { readonly dose: string }): string;
  notUnder(values: { readonly minutes: string }): string;
  atLeast(values: { readonly ml: string }): string;
  syringe(values: {
    readonly amount: string;
    readonly totalMl: string;
    readonly diluent: string;
    readonly start: string;
    readonly low: string;
    readonly high: string;
    readonly perMl: string;
  }): string;
  readonly maximum: string;
  readonly minimum: string;
  /** What rounding to a mark did, in a bracket beside the dose. */
  rounded(values: { readonly percent: string; readonly isLess: boolean }): string;
  noDose(values: { readonly because: string }): string;
  readonly equipmentTitle: string;
  readonly signsTitle: string;
  /** The pages behind all weights: what holds whatever the weight is. */
  readonly beforeGivingTitle: string;
  readonly beforeGivingNote: string;
  beforeGivingAt(values: { readonly page: string }): string;
  /** Before contraindications, cautions and monitoring. */
  readonly notFor: string;
  readonly beware: string;
  readonly watch: string;
}
