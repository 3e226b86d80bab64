import type { EntryNotice } from "../entry/index.ts";
import { ENGLISH } from "./english.ts";
import type { MessageCatalogue } from "./message-catalogue.ts";
import { say } from "./say.ts";

/**
 * How a typed text was taken, as one sentence.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { describeEntryNotice } from "@steelyard/core/wording";
 * const notice = { type: "unit-converted", field: "armMm", text: "19 cm", value: 190 } as const;
 * assert.match(describeEntryNotice(notice), /"19 cm" was taken as 190\smm/);
 * ```
 */
export function describeEntryNotice(notice: EntryNotice, catalogue: MessageCatalogue = ENGLISH): string {
  return say(catalogue, "entry-notice", notice);
}
