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
  const kept = new Map<string, number>();
  const advance = (font: FontName, file: number, text: string): number => {
    const key = `${font}${file}${text}`;
    const before = kept.get(key);
    if (before !== undefined) return before;
    const own = fonts[font][file] as Font;
    const em = own.layout(text).advanceWidth / own.unitsPerEm;
    kept.set(key, em);
    return em;
  };
  const runs: Typefaces["runs"] = (text, { font, sizePt }) =>
    splitByFile(text, fonts[font]).map(({ file, text: part }) => ({
      font,
      file,
      text: part,
      widthMm: advance(font, file, part) * sizePt * pointMm,
    }));
  return {
    files,
    capHeight: first.capHeight / first.unitsPerEm,
    descent: 0.24,
    runs,
    widthMm: (text, look) => runs(text, look).reduce((sum, { widthMm }) => sum + widthMm, 0),
    missing: (text, font) => [
      ...new Set([...text].filter((character) => fileOf(character, fonts[font]) === undefined)),
    ],
  };
}

function splitByFile(text: string, fonts: readonly Font[]): { file: number; text: string }[] {
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

function fileOf(character: string, fonts: readonly Font[]): number | undefined {
  const index = fonts.findIndex((font) => font.hasGlyphForCodePoint(codePoint(character)));
  return index === -1 ? undefined : index;
}

function codePoint(character: string): number {
  return character.codePointAt(0) ?? 0;
}
