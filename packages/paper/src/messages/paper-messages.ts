import type { Language } from "@steelyard/core/wording";
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
  /** What the library says in it, and how it writes numbers. */
  readonly language: Language;
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
