import type { ChildFacts } from "./child-facts.ts";
import type { SourceRef } from "./citation.ts";
import type { Means } from "./deliver.ts";
import type { DoseOption, Medicine, Use } from "./formulary.ts";

/** All that one line is computed from. */
export interface LineTask {
  readonly medicine: Medicine;
  readonly use: Use;
  readonly option: DoseOption;
  readonly means: Means;
  readonly child: ChildFacts;
  readonly sources: readonly SourceRef[];
}
