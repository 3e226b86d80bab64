export { checkDrawing, type DrawingFault } from "./drawing/check-drawing.ts";
export type { Anchor, Box, Colour, Drawing, FontName, Group, Item, Line, Page, Path, Point, Rectangle, Role, Segment, Stroke, Text } from "./drawing/item.ts";
export { breakLines, type Paragraph, setParagraph, setText, type TextLook } from "./drawing/set-text.ts";
export { createTypefaces, type FontRun, type TypefaceFiles, type Typefaces } from "./drawing/typefaces.ts";
export { type RenderPdfOptions, renderPdf } from "./render/render-pdf.ts";
export { type RenderSvgOptions, renderSvg } from "./render/render-svg.ts";
