import type { Block } from "./caution-block.ts";
import { ENGLISH } from "./english.ts";
import type { MessageCatalogue } from "./message-catalogue.ts";

/**
 * The banner that stands over every sheet as long as the formulary is not signed.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { draftBanner } from "@steelyard/core/wording";
 * assert.equal(draftBanner().title, "Draft formulary, not signed");
 * ```
 */
export function draftBanner(catalogue: MessageCatalogue = ENGLISH): Block {
  return { title: catalogue["draft.title"]({}), lines: [catalogue["draft.text"]({})] };
}
