import { rename, rm, writeFile } from "node:fs/promises";
import { checkDrawing, type Drawing, type DrawingFault, renderPdf, renderSvg } from "@steelyard/paper";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { fileFailure } from "../file-failure.ts";
import { SOFTWARE_VERSION } from "../software-version.ts";
import type { LoadedPaper } from "./paper-options.ts";

/** What kind of file the name asks for; refused before anything is computed. */
export function formatOf(output: string): "pdf" | "svg" {
  const ending = /\.(pdf|svg)$/i.exec(output)?.[1]?.toLowerCase();
  if (ending === "pdf" || ending === "svg") return ending;
  throw new CommandFailure(
    EXIT.wrongUsage,
    `${output} must end in .pdf, or in .svg for one picture a page. Nothing was written.`,
  );
}

/** A drawing to its file, or its pages to one SVG each: whole or not at all, and never with a text that does not fit. */
export async function writePaper(given: {
  readonly drawing: Drawing;
  readonly output: string;
  readonly loaded: LoadedPaper;
  /** Told after each page of a PDF. */
  readonly onPage?: (done: number) => void;
}): Promise<void> {
  const { drawing, output, loaded, onPage } = given;
  const { typefaces } = loaded.context;
  const faults = checkDrawing(drawing, typefaces);
  if (faults.length > 0) throw drawingFailure(faults);
  if (formatOf(output) === "svg") {
    const { title, pages } = drawing;
    const files = pages.map((page, i) => ({
      path: pages.length === 1 ? output : output.replace(/(\.svg)$/i, `-${i + 1}$1`),
      content: renderSvg(page, { title: `${title}, ${page.label}`, embed: typefaces.files }),
    }));
    await writeWhole(files);
    say(
      drawing,
      files.map(({ path }) => path),
    );
    return;
  }
  const creator = `steelyard ${SOFTWARE_VERSION}`;
  const content = await renderPdf(drawing, {
    typefaces,
    madeOn: loaded.madeOn,
    creator,
    ...(onPage && { onPage }),
  });
  await writeWhole([{ path: output, content }]);
  say(drawing, [output]);
}

function say({ title, pages }: Drawing, paths: readonly string[]): void {
  const count = pages.length === 1 ? "1 page" : `${pages.length} pages`;
  process.stderr.write(
    `${title}, ${count}: ${paths.join(", ")}\nPrint at 100 %, then measure the two proof rulers on every page before use.\n`,
  );
}

async function writeWhole(files: readonly { path: string; content: string | Uint8Array }[]): Promise<void> {
  const parts = files.map(({ path }) => `${path}.part`);
  let current = "";
  try {
    for (const { path, content } of files) {
      current = path;
      await writeFile(`${path}.part`, content);
    }
    for (const { path } of files) {
      current = path;
      await rename(`${path}.part`, path);
    }
  } catch (error) {
    await Promise.all(parts.map((part) => rm(part, { force: true })));
    throw fileFailure("write", current, error);
  }
}

function drawingFailure(faults: readonly DrawingFault[]): CommandFailure {
  const sentences = faults.slice(0, 5).map((fault) => {
    if (fault.type === "glyphs-missing") {
      return `* page ${fault.page}: the typeface has no ${fault.characters} of "${fault.text}"`;
    }
    return fault.type === "text-off-its-box"
      ? `* page ${fault.page}: "${fault.text}" is too long for its place`
      : `* page ${fault.page}: "${fault.texts[0]}" would stand on "${fault.texts[1]}"`;
  });
  return new CommandFailure(
    EXIT.notServed,
    ["The paper cannot be drawn cleanly; nothing was written.", ...sentences].join("\n"),
  );
}
