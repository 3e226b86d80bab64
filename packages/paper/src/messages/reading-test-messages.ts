/** The words of the reading test. */
export interface ReadingTestMessages {
  readonly title: string;
  readonly subtitle: string;
  readonly answersTitle: string;
  readonly answersSubtitle: string;
  readonly how: string;
  child(values: { readonly number: number }): string;
  length(values: { readonly cm: string }): string;
  arm(values: { readonly mm: string }): string;
  readonly total: string;
  readonly ideal: string;
  readonly reader: string;
  readonly date: string;
  readonly columns: {
    readonly child: string;
    readonly length: string;
    readonly arm: string;
    readonly line: string;
    readonly right: string;
    readonly ideal: string;
    readonly range: string;
  };
  /** Between the weights of a list. */
  readonly between: string;
  readonly marking: string;
  readonly childAlt: string;
}
