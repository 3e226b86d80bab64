import regular from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff?url";
import bold from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff?url";
import regularMore from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-400-normal.woff?url";
import boldMore from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-700-normal.woff?url";
import { createTypefaces, type Typefaces } from "@steelyard/paper";

let kept: Promise<Typefaces> | undefined;

/** The typeface that papers are set in: its files as a PDF can embed them. */
export function loadPaperTypefaces(): Promise<Typefaces> {
  kept ??= load();
  // A network that was away may be back.
  kept.catch(() => {
    kept = undefined;
  });
  return kept;
}

async function load(): Promise<Typefaces> {
  const [first, more, strong, strongMore] = await Promise.all([
    bytes(regular),
    bytes(regularMore),
    bytes(bold),
    bytes(boldMore),
  ]);
  return createTypefaces({ regular: [first, more], bold: [strong, strongMore] });
}

async function bytes(url: string): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`Cannot load ${url}: ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
}
