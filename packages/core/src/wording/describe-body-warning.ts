import type { BodyWarning } from "../body/index.ts";
import { ENGLISH } from "./english.ts";
import type { MessageCatalogue } from "./message-catalogue.ts";
import { say } from "./say.ts";

/**
 * What the reader of an estimate must know, as one or two sentences.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { describeBodyWarning } from "@steelyard/core/wording";
 * assert.match(describeBodyWarning({ type: "no-girth" }), /build is unknown/);
 * ```
 */
export function describeBodyWarning(warning: BodyWarning, catalogue: MessageCatalogue = ENGLISH): string {
  return say(catalogue, "body-warning", warning);
}
