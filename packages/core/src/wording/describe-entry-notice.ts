import type { EntryNotice } from "../entry/index.ts";
import { ENGLISH } from "./english.ts";
import type { MessageCatalogue } from "./message-catalogue.ts";
import { say } from "./say.ts";

/** How a typed text was taken, as one sentence. */
export function describeEntryNotice(notice: EntryNotice, catalogue: MessageCatalogue = ENGLISH): string {
  return say(catalogue, "entry-notice", notice);
}
