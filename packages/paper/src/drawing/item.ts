// The drawing vocabulary. x runs right and y runs down from the top left corner of the page, everything in
// millimetres; type sizes in points of 25.4/72 mm. A drawing is data: renderers and checks read the same list.

/** x and y in mm. */
export type Point = readonly [xMm: number, yMm: number];

export interface Box {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** "#rrggbb". */
export type Colour = `#${string}`;

export interface Stroke {
  readonly colour: Colour;
  readonly widthMm: number;
  /** Lengths of dash and gap, mm. */
  readonly dashMm?: readonly number[];
  /** Ends and corners of lines; when absent ends are butt, so that a tick ends where it ends. */
  readonly cap?: "butt" | "round";
}

export interface Line {
  readonly kind: "line";
  readonly from: Point;
  readonly to: Point;
  readonly stroke: Stroke;
}

/** M: move to, L: line to, C: cubic Bezier by two control points to a point, Z: close. */
export type Segment =
  | readonly ["M" | "L", number, number]
  | readonly ["C", number, number, number, number, number, number]
  | readonly ["Z"];

export interface Path {
  readonly kind: "path";
  readonly segments: readonly Segment[];
  readonly stroke?: Stroke;
  readonly fill?: Colour;
}

export interface Rectangle extends Box {
  readonly kind: "rectangle";
  readonly radiusMm?: number;
  readonly stroke?: Stroke;
  readonly fill?: Colour;
}

export type FontName = "regular" | "bold";
export type Anchor = "start" | "middle" | "end";

/** One line of text; made by `setText`, which measures it in the font that is embedded. */
export interface Text {
  readonly kind: "text";
  readonly text: string;
  /** Where the anchor stands on the baseline. */
  readonly at: Point;
  readonly anchor: Anchor;
  readonly font: FontName;
  readonly sizePt: number;
  readonly colour: Colour;
  /** Clockwise about `at`; 0 when absent. */
  readonly angleDeg?: number;
  /** Measured width. */
  readonly widthMm: number;
  /** The box that it must stay in, in the coordinates of the page; the page alone when absent. */
  readonly within?: Box;
}

/** What a group is to a screen reader: the standard structure types of PDF. */
export type Role =
  | "H1"
  | "H2"
  | "H3"
  | "P"
  | "Figure"
  | "Table"
  | "TR"
  | "TH"
  | "TD"
  | "L"
  | "LI"
  | "Note"
  | "Span";

export interface Group {
  readonly kind: "group";
  readonly items: readonly Item[];
  readonly role?: Role;
  /** Language of its words where that is not the language of the drawing; with a role. */
  readonly language?: string;
  /** What a figure shows, in words. */
  readonly alt?: string;
  /** Nothing outside this box is drawn. */
  readonly clip?: Box;
  /** Lies under everything else, as a watermark does: other text may stand on it, and a screen reader skips it. */
  readonly under?: true;
}

export type Item = Line | Path | Rectangle | Text | Group;

export interface Page {
  readonly widthMm: number;
  readonly heightMm: number;
  /** What the page is called in the viewer: "2", "25 to 50 cm". */
  readonly label: string;
  readonly items: readonly Item[];
}

/** A finished drawing: what renderers take. */
export interface Drawing {
  readonly title: string;
  /** Language of its words, as "en". */
  readonly language: string;
  readonly pages: readonly Page[];
}
