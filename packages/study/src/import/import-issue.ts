import type { StudyField } from "./study-field.ts";

/** Why a file cannot be imported: what is wrong and where. */
export type ImportIssue =
  | { readonly type: "empty-file" }
  /** Neither text, workbook nor SAS transport; `found` is the kind where it can be told. */
  | { readonly type: "not-a-table"; readonly found: string; readonly atByte: number }
  | { readonly type: "header-only"; readonly columns: number }
  /** The whole header is one cell: the mark that parts the cells is none of comma, semicolon, tab and bar. */
  | { readonly type: "one-column"; readonly header: string }
  | { readonly type: "header-missing"; readonly firstRow: readonly string[] }
  | { readonly type: "too-many-columns"; readonly columns: number; readonly most: number }
  | { readonly type: "quote-not-closed"; readonly row: number }
  | { readonly type: "workbook-damaged"; readonly detail: string }
  | { readonly type: "workbook-too-large"; readonly bytes: number; readonly most: number }
  /** Cells so far apart that the table between them would not fit; `farthest` is where it would end. */
  | { readonly type: "sheet-scattered"; readonly cells: number; readonly farthest: string }
  | { readonly type: "sheet-missing"; readonly sheet: string; readonly sheets: readonly string[] }
  | { readonly type: "transport-damaged"; readonly atByte: number }
  | { readonly type: "transport-version"; readonly found: string }
  | { readonly type: "column-unknown"; readonly column: string; readonly columns: readonly string[] }
  | { readonly type: "column-missing"; readonly field: StudyField; readonly columns: readonly string[] };
