/** The words of the child sheet. */
export interface ChildSheetMessages {
  readonly title: string;
  readonly subtitle: string;
  readonly name: string;
  readonly weighed: string;
  readonly total: string;
  readonly ideal: string;
  range(values: { readonly low: string; readonly high: string }): string;
  readonly given: string;
  readonly by: string;
  readonly checked: string;
  readonly workingTitle: string;
  readonly workingSubtitle: string;
  readonly equipmentTitle: string;
  readonly signsTitle: string;
}
