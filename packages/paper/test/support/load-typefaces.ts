import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { createTypefaces, type Typefaces } from "@steelyard/paper";

let typefaces: Typefaces | undefined;

/** The typeface that papers are set in, from its package. */
export function loadTypefaces(): Typefaces {
  typefaces ??= createTypefaces({
    regular: [file("latin", 400), file("latin-ext", 400)],
    bold: [file("latin", 700), file("latin-ext", 700)],
  });
  return typefaces;
}

function file(subset: string, weight: number): Uint8Array {
  const name = `@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-${subset}-${weight}-normal.woff`;
  return readFileSync(fileURLToPath(import.meta.resolve(name)));
}
