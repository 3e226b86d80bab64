export type { LineDrawing, Tube } from "./line-drawing.ts";
export { type Technique, techniqueDrawings } from "./technique-drawings.ts";
