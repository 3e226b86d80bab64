/** A limb or a trunk: a stroke as wide as the limb, drawn as its outline only. */
export interface Tube {
  /** An SVG path in mm. */
  readonly d: string;
  /** From one outline to the other, mm. */
  readonly widthMm: number;
}

/**
 * A line drawing as data: paths in millimetres, origin at the top left. Whoever draws it strokes every tube of a group in the colour of the
 * lines, then every tube of that group a line's width narrower in the colour of the ground; so the limbs of a group melt into one outline.
 */
export interface LineDrawing {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Groups of tubes from the back to the front. */
  readonly bodies: readonly (readonly Tube[])[];
  /** Thin lines: bed, chair, face. */
  readonly lines: string;
  /** Where the tape runs. */
  readonly tape: string;
  /** Short strokes and points that say from where to where. */
  readonly marks: string;
}
