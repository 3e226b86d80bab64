import type { Typefaces } from "../drawing/typefaces.ts";
import type { PaperMessages } from "../messages/paper-messages.ts";
import type { Imprint } from "./imprint.ts";

/** What every paper is drawn with. */
export interface SheetContext {
  readonly typefaces: Typefaces;
  readonly messages: PaperMessages;
  readonly imprint: Imprint;
}
