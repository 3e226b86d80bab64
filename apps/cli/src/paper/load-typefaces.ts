import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { createTypefaces, type Typefaces } from "@steelyard/paper";

const folder = "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next";

/** The typeface that papers are set in: Latin, then the letters of more languages. */
export async function loadTypefaces(): Promise<Typefaces> {
  const [regular, regularMore, bold, boldMore] = await Promise.all([
    read("latin-400"),
    read("latin-ext-400"),
    read("latin-700"),
    read("latin-ext-700"),
  ]);
  return createTypefaces({ regular: [regular, regularMore], bold: [bold, boldMore] });
}

function read(name: string): Promise<Uint8Array> {
  return readFile(fileURLToPath(import.meta.resolve(`${folder}-${name}-normal.woff`)));
}
