import type { Fate, ImportIssue } from "../import/index.ts";
import type { Method } from "../methods/index.ts";

/** Every sentence of a report that is not data: the catalogue of one language. */
export interface ReportWords {
  readonly language: string;
  readonly reportTitle: (file: string) => string;
  readonly count: (n: number) => string;
  /** To a tenth, with its sign and "%". */
  readonly percent: (value: number) => string;
  readonly methodName: (method: Method) => string;
  readonly fate: (fate: Fate) => string;
  readonly issue: (issue: ImportIssue) => string;
  readonly rowsRead: (n: number) => string;
  readonly leftOut: (n: number) => string;
  readonly compared: (n: number) => string;
  readonly servedBy: string;
  readonly flowTitle: string;
  readonly percentageError: string;
  readonly meanOfBoth: string;
  readonly withinAxis: string;
  readonly meanEstimate: string;
  readonly meanWeight: string;
}
