import { ENGLISH_LANGUAGE } from "@steelyard/core/wording";
import type { PaperMessages } from "../paper-messages.ts";
import { ENGLISH_ARM_BAND } from "./arm-band.ts";
import { ENGLISH_BOOKLET } from "./booklet.ts";
import { ENGLISH_CHILD_SHEET } from "./child-sheet.ts";
import { ENGLISH_FRAME } from "./frame.ts";
import { ENGLISH_GRID } from "./grid.ts";
import { ENGLISH_GUIDE } from "./guide.ts";
import { ENGLISH_LABELS } from "./labels.ts";
import { ENGLISH_READING_TEST } from "./reading-test.ts";
import { ENGLISH_STRIP } from "./strip.ts";

/** The English words on paper; the source that other languages are translated from. */
export const ENGLISH_PAPER: PaperMessages = {
  language: ENGLISH_LANGUAGE,
  frame: ENGLISH_FRAME,
  strip: ENGLISH_STRIP,
  armBand: ENGLISH_ARM_BAND,
  grid: ENGLISH_GRID,
  booklet: ENGLISH_BOOKLET,
  labels: ENGLISH_LABELS,
  guide: ENGLISH_GUIDE,
  childSheet: ENGLISH_CHILD_SHEET,
  readingTest: ENGLISH_READING_TEST,
};
