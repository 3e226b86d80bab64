// What this package uses of PDFKit, which ships no types.
declare module "pdfkit" {
  export interface StructureElement {
    add(child: StructureChild): this;
    end(): void;
  }
  export type StructureChild = StructureElement | (() => void);

  export interface PdfReference {
    readonly data: Record<string, unknown>;
  }

  export class PDFDocument {
    constructor(options: {
      readonly autoFirstPage: false;
      readonly font: null;
      readonly pdfVersion: string;
      readonly tagged: boolean;
      readonly displayTitle: boolean;
      readonly lang: string;
      readonly info: Readonly<Record<string, string | Date>>;
    });
    readonly _root: PdfReference;
    readonly page: { readonly dictionary: PdfReference };
    addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): this;
    registerFont(name: string, bytes: Uint8Array): this;
    font(name: string): this;
    fontSize(points: number): this;
    text(
      text: string,
      x: number,
      y: number,
      options: { readonly lineBreak: false; readonly baseline: "alphabetic" },
    ): this;
    save(): this;
    restore(): this;
    scale(factor: number): this;
    rotate(degrees: number, options: { readonly origin: readonly [number, number] }): this;
    rect(x: number, y: number, width: number, height: number): this;
    roundedRect(x: number, y: number, width: number, height: number, radius: number): this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    bezierCurveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): this;
    closePath(): this;
    clip(): this;
    lineWidth(width: number): this;
    lineCap(cap: "butt" | "round"): this;
    lineJoin(join: "miter" | "round"): this;
    dash(lengths: readonly number[], options?: Readonly<Record<never, never>>): this;
    undash(): this;
    fill(colour?: string): this;
    stroke(colour?: string): this;
    fillAndStroke(fill: string, stroke: string): this;
    fillColor(colour: string): this;
    markContent(tag: string): this;
    endMarkedContent(): this;
    struct(
      type: string,
      options: { readonly alt?: string; readonly lang?: string },
      children?: readonly StructureChild[],
    ): StructureElement;
    addStructure(element: StructureElement): this;
    on(event: "data", listener: (chunk: Uint8Array) => void): this;
    on(event: "end", listener: () => void): this;
    on(event: "error", listener: (error: Error) => void): this;
    end(): void;
  }
}
