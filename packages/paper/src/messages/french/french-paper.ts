import { FRENCH_LANGUAGE } from "@steelyard/core/wording";
import type { PaperMessages } from "../paper-messages.ts";
import { FRENCH_ARM_BAND } from "./arm-band.ts";
import { FRENCH_BOOKLET } from "./booklet.ts";
import { FRENCH_CHILD_SHEET } from "./child-sheet.ts";
import { FRENCH_FRAME } from "./frame.ts";
import { FRENCH_GRID } from "./grid.ts";
import { FRENCH_GUIDE } from "./guide.ts";
import { FRENCH_LABELS } from "./labels.ts";
import { FRENCH_READING_TEST } from "./reading-test.ts";
import { FRENCH_STRIP } from "./strip.ts";

/**
 * The French words on paper: machine-translated and reviewed by nobody; for a bay only after somebody who speaks it and knows the work has
 * read them.
 */
export const FRENCH_PAPER: PaperMessages = {
  language: FRENCH_LANGUAGE,
  frame: FRENCH_FRAME,
  strip: FRENCH_STRIP,
  armBand: FRENCH_ARM_BAND,
  grid: FRENCH_GRID,
  booklet: FRENCH_BOOKLET,
  labels: FRENCH_LABELS,
  guide: FRENCH_GUIDE,
  childSheet: FRENCH_CHILD_SHEET,
  readingTest: FRENCH_READING_TEST,
};
