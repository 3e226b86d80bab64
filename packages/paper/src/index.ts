export { drawArmBand } from "./arm-band/draw-arm-band.ts";
export { type BookletInput, drawBooklet, emergencyProblems } from "./booklet/draw-booklet.ts";
export type { ChildSheetInput } from "./child-sheet/child-sheet-input.ts";
export { drawChildSheet } from "./child-sheet/draw-child-sheet.ts";
export { checkDrawing, type DrawingFault } from "./drawing/check-drawing.ts";
export type {
  Anchor,
  Box,
  Colour,
  Drawing,
  FontName,
  Group,
  Item,
  Line,
  Page,
  Path,
  Point,
  Rectangle,
  Role,
  Segment,
  Stroke,
  Text,
} from "./drawing/item.ts";
export { createTypefaces, type FontRun, type TypefaceFiles, type Typefaces } from "./drawing/typefaces.ts";
export { createImprint, type Imprint, type ImprintInput, type ImprintIssue } from "./frame/imprint.ts";
export { type PageName, type PageSize, pageSizeOf, pageSizes, type UnknownPage } from "./frame/page-size.ts";
export type { SheetContext } from "./frame/sheet-context.ts";
export { drawWeightGrid } from "./grid/draw-weight-grid.ts";
export type { WeightGridInput } from "./grid/weight-grid-input.ts";
export { drawGuide } from "./guide/draw-guide.ts";
export { drawLabels, type LabelsInput } from "./labels/draw-labels.ts";
export { type LabelSheet, labelSheetOf, labelSheets, type UnknownLabelSheet } from "./labels/label-sheet.ts";
export { ENGLISH_PAPER } from "./messages/english/english-paper.ts";
export type { PaperMessages } from "./messages/paper-messages.ts";
export { drawReadingTest, type ReadingTestInput } from "./reading-test/draw-reading-test.ts";
export { type RenderPdfOptions, renderPdf } from "./render/render-pdf.ts";
export { type RenderSvgOptions, renderSvg } from "./render/render-svg.ts";
export { drawStrip } from "./strip/draw-strip.ts";
export type { StripInput, StripMedium } from "./strip/strip-input.ts";
export { narrowestMm, type TooNarrow } from "./strip/strip-layout.ts";
