import type { Proposal } from "@steelyard/core/entry";

/** A sentence about one field; an issue keeps the number out, a notice lets it in. */
export interface FieldMessage {
  readonly field: string;
  readonly kind: "issue" | "notice";
  readonly sentence: string;
  readonly proposals: readonly Proposal[];
}
