import type { ChildFacts } from "./child-facts.ts";
import type { Means } from "./deliver.ts";
import type { DoseOption, Use } from "./formulary.ts";
import type { LineHead } from "./line-head.ts";

/** All that one line is computed from. */
export interface LineTask {
  readonly head: LineHead;
  readonly use: Use;
  readonly option: DoseOption;
  readonly means: Means;
  readonly child: ChildFacts;
}
