/** The words of the syringe labels. */
export interface LabelsMessages {
  readonly title: string;
  readonly subtitle: string;
  readonly how: string;
  readonly noLabels: string;
  readonly drawnUp: string;
  readonly by: string;
  weight(values: { readonly kg: string }): string;
}
