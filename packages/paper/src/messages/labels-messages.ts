import type { LabelClass } from "../labels/label-class.ts";

/** The words of the syringe labels. */
export interface LabelsMessages {
  readonly title: string;
  readonly subtitle: string;
  readonly how: string;
  readonly noLabels: string;
  readonly drawnUp: string;
  readonly by: string;
  /** The classes of ISO 26825 in words, beside their colours. */
  readonly classes: Readonly<Record<LabelClass, string>>;
  /** The weight that the dose goes by, and which one that is. */
  weight(values: { readonly kg: string; readonly basis: string }): string;
}
