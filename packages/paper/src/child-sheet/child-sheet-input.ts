import type { ChildReport } from "@steelyard/core/child";
import type { ProblemId } from "@steelyard/core/dosing";
import type { PageSize } from "../frame/page-size.ts";
import type { SheetContext } from "../frame/sheet-context.ts";

export interface ChildSheetInput extends SheetContext {
  readonly size: PageSize;
  /** Everything computed for the child: the same value that the screen shows. */
  readonly report: ChildReport;
  /** What was measured, in words: "length 136 cm". */
  readonly measured: readonly string[];
  /** Sentences about what was typed that its reader must know. */
  readonly notes?: readonly string[];
  readonly problems: readonly ProblemId[];
}
