import type { PaperKind, PaperPage } from "../screens/paper/paper-choices.ts";

/** The words of the Paper screen; those on the papers themselves are the paper package's. */
export const paperEn = {
  intro:
    "True-scale papers for a bay without a screen. Print the PDF at 100 %, measure the two rulers on every page, and throw away a page that is off.",
  kind: "Paper",
  kinds: {
    strip: "Length strip",
    "arm-band": "Arm band",
    grid: "Weight grid",
    "grid-waist": "Weight grid with waist",
    booklet: "Dose booklet",
    child: "Child sheet",
    labels: "Syringe labels",
    guide: "Measuring guide",
    "reading-test": "Reading test",
  } satisfies Record<PaperKind, string>,
  page: "Printed on",
  pages: {
    a4: "A4",
    a3: "A3",
    letter: "Letter",
    roll: "a roll",
    "70x37": "labels of 70 × 37 mm on A4",
    "63.5x38.1": "labels of 63.5 × 38.1 mm on A4",
    "2.625x1in": "labels of 2⅝ × 1 in on Letter",
  } satisfies Record<PaperPage, string>,
  language: "Language of the paper",
  unreviewed: "French is machine-translated and reviewed by nobody; every page says so.",
  classColours: "Class colours of ISO 26825 beside the words",
  problems: "Problems on it",
  noProblem: "Choose a problem at least: without one there is no dose on it.",
  noChild: "There is no child on Bedside: enter length and arm there, then come back.",
  progress: (done: number, of: number): string => `Weight ${done} of ${of} drawn.`,
  cancel: "Cancel",
  cancelled: "Cancelled.",
  drawAgain: "Draw it",
  rollWidth: "Width of the roll",
  rollWidthUnit: "mm",
  site: "Calibration of your site",
  siteHint: "the file that steelyard calibrate writes; without it the paper is for any site",
  formulary: "Formulary of your site",
  formularyHint: "signed, or the paper is a draft and says so across every page",
  takeOff: (file: string): string => `Take off ${file}`,
  drawing: "Drawing.",
  preview: (page: number, pages: number): string => `Page ${page} of ${pages}`,
  previousPage: "Page before",
  nextPage: "Next page",
  download: (pages: number): string =>
    pages === 1 ? "Download the PDF, 1 page" : `Download the PDF, ${pages} pages`,
  making: "Making the PDF.",
  made: (file: string): string => `${file} was made. Print it at 100 %.`,
  notMade: "The PDF could not be made here. On the command line:",
  typefaceMissing: "The typeface of the papers could not be loaded. Look again with the network on.",
  rollWidthMissing: "Enter the width of the roll in mm, such as 297.",
  tooNarrow: (widthMm: string, leastMm: string): string =>
    `${widthMm} mm is too narrow: the lines could not be told apart. It needs ${leastMm} mm or more.`,
  tooWide: (mostMm: string): string => `A roll is at most ${mostMm} mm wide.`,
  otherModel: (profileModel: string, currentModel: string): string =>
    `The calibration was made for body model ${profileModel}, and this is ${currentModel}: calibrate again.`,
  changedSinceSigned: (name: string, date: string): string =>
    `The formulary was changed after ${name} signed it on ${date}: have it reviewed and signed again.`,
  notJson: (file: string): string => `${file} is not a file of that kind.`,
  faults: (file: string, count: number): string =>
    `${file} has ${count === 1 ? "1 fault" : `${count} faults`}; nothing of it was taken.`,
  cannotDraw: "The paper cannot be drawn cleanly:",
  glyphsMissing: (characters: string, text: string): string =>
    `The typeface has no ${characters} of “${text}”.`,
  doesNotFit: (text: string): string => `“${text}” does not fit in its place.`,
};
