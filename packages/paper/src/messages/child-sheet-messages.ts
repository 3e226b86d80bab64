/** The words of the child sheet. */
export interface ChildSheetMessages {
  readonly title: string;
  readonly name: string;
  readonly weighed: string;
  readonly total: string;
  readonly ideal: string;
  range(values: { readonly low: string; readonly high: string }): string;
  readonly given: string;
  readonly by: string;
  readonly checked: string;
  readonly workingTitle: string;
  /** Under the titles: which side of which sheet it is, and what it is for. */
  front(values: SheetNumber): string;
  back(values: SheetNumber): string;
  /** Over lines to write on. */
  readonly furtherTitle: string;
  /** A side for which no doses or working were left. */
  readonly notesTitle: string;
  notes(values: SheetNumber): string;
}

export interface SheetNumber {
  readonly sheet: number;
  readonly sheets: number;
}
