import { ENGLISH } from "./english.ts";
import type { MessageCatalogue } from "./message-catalogue.ts";

/** A heading and the sentences under it. */
export interface Block {
  readonly title: string;
  readonly lines: readonly string[];
}

/**
 * The safety words that every output carries.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { cautionBlock } from "@steelyard/core/wording";
 * assert.ok(cautionBlock().lines.includes("Weigh the child as soon as you can."));
 * ```
 */
export function cautionBlock(catalogue: MessageCatalogue = ENGLISH): Block {
  return {
    title: catalogue["caution.title"]({}),
    lines: [
      catalogue["caution.decision-support"]({}),
      catalogue["caution.weigh"]({}),
      catalogue["caution.local-guidelines"]({}),
      catalogue["caution.check-doses"]({}),
      catalogue["caution.not-a-device"]({}),
    ],
  };
}
