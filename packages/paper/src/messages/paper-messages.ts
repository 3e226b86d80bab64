import type { MessageCatalogue } from "@steelyard/core/wording";
import type { ArmBandMessages } from "./arm-band-messages.ts";
import type { BookletMessages } from "./booklet-messages.ts";
import type { ChildSheetMessages } from "./child-sheet-messages.ts";
import type { FrameMessages } from "./frame-messages.ts";
import type { GridMessages } from "./grid-messages.ts";
import type { GuideMessages } from "./guide-messages.ts";
import type { LabelsMessages } from "./labels-messages.ts";
import type { ReadingTestMessages } from "./reading-test-messages.ts";
import type { StripMessages } from "./strip-messages.ts";

/** Every word on paper in one language, by area. */
export interface PaperMessages {
  /** As in a language tag: "en". */
  readonly language: string;
  readonly core: MessageCatalogue;
  readonly frame: FrameMessages;
  readonly strip: StripMessages;
  readonly armBand: ArmBandMessages;
  readonly grid: GridMessages;
  readonly booklet: BookletMessages;
  readonly labels: LabelsMessages;
  readonly guide: GuideMessages;
  readonly childSheet: ChildSheetMessages;
  readonly readingTest: ReadingTestMessages;
}
