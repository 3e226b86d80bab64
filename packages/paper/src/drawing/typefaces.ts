/// <reference path="./fontkit.d.ts" />
import { create, type Font } from "fontkit";
import type { FontName } from "./item.ts";
import { pointMm } from "./shapes.ts";

/** The files of a typeface: for each font the file to take first and those that hold further letters. */
export type TypefaceFiles = Readonly<Record<FontName, readonly Uint8Array[]>>;

/** A stretch of text that one file can set. */
export interface FontRun {
  readonly font: FontName;
  /** Index of the file among those of the font. */
  readonly file: number;
  readonly text: string;
  readonly widthMm: number;
}

/** The fonts that are embedded, ready to measure text with. */
export interface Typefaces {
  readonly files: TypefaceFiles;
  /** Heights as a share of the type size: of capitals and figures, and of what hangs below the line. */
  readonly capHeight: number;
  readonly descent: number;
  /** Width of one line of text, kerning included, mm. */
  widthMm(text: string, look: { readonly font: FontName; readonly sizePt: number }): number;
  /** The text cut where another file must take over. */
  runs(text: string, look: { readonly font: FontName; readonly sizePt: number }): readonly FontRun[];
  /** The characters of a text that no file of the font has. */
  missing(text: string, font: FontName): readonly string[];
}

/**
 * Typefaces from their font files, for measuring and embedding.
 *
 * Width = sum of the advances of the shaped glyphs x size. A character that no file has is set by the first, whose
 * "missing" box has a width too; `missing` names it. Throws what the font reader throws on a file that is no font.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readFileSync } from "node:fs";
 * import { createRequire } from "node:module";
 * import { createTypefaces } from "@steelyard/paper";
 *
 * const fonts = createRequire(import.meta.url);
 * const folder = "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin";
 * const read = (weight: number) => readFileSync(fonts.resolve(`${folder}-${weight}-normal.woff`));
 * const typefaces = createTypefaces({ regular: [read(400)], bold: [read(700)] });
 * const look = { font: "regular", sizePt: 10 } as const;
 * assert.ok(typefaces.widthMm("28.1 kg", look) > typefaces.widthMm("28 kg", look));
 * assert.deepEqual(typefaces.missing("5 ≤ 6", "regular"), ["≤"]);
 * ```
 */
export function createTypefaces(files: TypefaceFiles): Typefaces {
  const fonts: Record<FontName, readonly Font[]> = {
    regular: files.regular.map((bytes) => create(bytes)),
    bold: files.bold.map((bytes) => create(bytes)),
  };
  const [first] = fonts.regular;
  if (first === undefined || fonts.bold.length === 0) {
    throw new RangeError("Cannot make typefaces as each font must have at least one file");
  }
  // Word by word with the space after it, as the PDF library sets text; the same words come again and again.
  const kept: Record<FontName, Map<string, number>> = { regular: new Map(), bold: new Map() };
  const emOf = (font: FontName, text: string): number => {
    let em = 0;
    for (let from = 0; from < text.length; ) {
      const space = text.indexOf(" ", from);
      const to = space === -1 ? text.length : space + 1;
      em += emOfWord(font, text.slice(from, to));
      from = to;
    }
    return em;
  };
  const emOfWord = (font: FontName, word: string): number => {
    const before = kept[font].get(word);
    if (before !== undefined) return before;
    const em = splitByFile(word, fonts[font]).reduce(
      (sum, { file, text }) => sum + advanceOf(fonts[font][file] as Font, text),
      0,
    );
    kept[font].set(word, em);
    return em;
  };
  const runs: Typefaces["runs"] = (text, { font, sizePt }) => {
    const parts = splitByFile(text, fonts[font]);
    return parts.map((part) => {
      const em = parts.length === 1 ? emOf(font, text) : advanceOf(fonts[font][part.file] as Font, part.text);
      return { font, ...part, widthMm: em * sizePt * pointMm };
    });
  };
  return {
    files,
    capHeight: first.capHeight / first.unitsPerEm,
    descent: 0.24,
    runs,
    widthMm: (text, { font, sizePt }) => emOf(font, text) * sizePt * pointMm,
    missing: (text, font) =>
      hasAll(fonts[font][0], text)
        ? []
        : [...new Set([...text].filter((character) => fileOf(character, fonts[font]) === undefined))],
  };
}

function advanceOf(font: Font, text: string): number {
  return font.layout(text).advanceWidth / font.unitsPerEm;
}

function splitByFile(text: string, fonts: readonly Font[]): { file: number; text: string }[] {
  if (text !== "" && hasAll(fonts[0], text)) return [{ file: 0, text }];
  const parts: { file: number; text: string }[] = [];
  for (const character of text) {
    const last = parts.at(-1);
    // A space or a figure stays with the word it stands in where that file has it: kerning needs neighbours.
    const stays = last !== undefined && fonts[last.file]?.hasGlyphForCodePoint(codePoint(character));
    const file = stays && last.file === 0 ? 0 : (fileOf(character, fonts) ?? 0);
    if (last !== undefined && last.file === file) last.text += character;
    else parts.push({ file, text: character });
  }
  return parts;
}

/** Whether one font has the whole text, as it mostly has. */
function hasAll(font: Font | undefined, text: string): boolean {
  for (let i = 0; i < text.length; i += 1) {
    if (!font?.hasGlyphForCodePoint(text.codePointAt(i) ?? 0)) return false;
  }
  return true;
}

function fileOf(character: string, fonts: readonly Font[]): number | undefined {
  const index = fonts.findIndex((font) => font.hasGlyphForCodePoint(codePoint(character)));
  return index === -1 ? undefined : index;
}

function codePoint(character: string): number {
  return character.codePointAt(0) ?? 0;
}
