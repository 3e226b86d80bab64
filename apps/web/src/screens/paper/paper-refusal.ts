import type { BodyIssue } from "@steelyard/core/body";
import type { DrawingFault, ImprintIssue, TooNarrow } from "@steelyard/paper";

/** Why there is no paper, as data: the worker finds out, and the page has the words in its language. */
export type PaperRefusal =
  | ImprintIssue
  | TooNarrow
  | { readonly type: "no-problem" }
  | { readonly type: "no-child" }
  | { readonly type: "roll-width-missing" }
  | { readonly type: "too-wide"; readonly mostMm: number }
  /** The child cannot be estimated by the calibration of the paper. */
  | { readonly type: "no-estimate"; readonly issue: BodyIssue }
  | { readonly type: "faults"; readonly faults: readonly DrawingFault[] }
  | { readonly type: "not-loaded" }
  /** Whatever nobody foresaw; the command makes the same paper. */
  | { readonly type: "failed" };
