// What this package uses of fontkit, which ships no types.
declare module "fontkit" {
  export interface Font {
    readonly postscriptName: string;
    readonly unitsPerEm: number;
    readonly capHeight: number;
    hasGlyphForCodePoint(codePoint: number): boolean;
    layout(text: string): { readonly advanceWidth: number };
  }
  export function create(bytes: Uint8Array): Font;
}
