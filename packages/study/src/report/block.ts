import type { Page } from "@steelyard/paper";

/** A table of a report: cells as they are printed, and the numbers behind them for its CSV. */
export interface ReportTable {
  /** File name of its CSV, without the ending. */
  readonly name: string;
  readonly caption: string;
  readonly head: readonly string[];
  /** The first cell of a row is its name. */
  readonly rows: readonly (readonly string[])[];
  /** Column names and values of the CSV, in full precision. */
  readonly data: {
    readonly columns: readonly string[];
    readonly rows: readonly (readonly (string | number)[])[];
  };
}

/** One thing after another: what a page or a printed report is made of. */
export type Block =
  | { readonly type: "heading"; readonly text: string; readonly level: 2 | 3 }
  | { readonly type: "text"; readonly text: string }
  | { readonly type: "list"; readonly items: readonly string[] }
  | { readonly type: "table"; readonly table: ReportTable }
  | { readonly type: "figure"; readonly name: string; readonly caption: string; readonly page: Page };

/** A report as data: the same blocks make the HTML, the PDF, the CSV files and the figures. */
export interface StudyReport {
  readonly title: string;
  readonly language: string;
  readonly madeOn: string;
  readonly creator: string;
  readonly blocks: readonly Block[];
}
