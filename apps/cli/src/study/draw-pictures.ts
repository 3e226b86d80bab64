import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { renderSvg, type Typefaces } from "@steelyard/paper";
import type { StudyReport } from "@steelyard/study/report";
import { unpackFont } from "./unpack-font.ts";

/** About 300 dots per inch over a figure of 170 mm. */
const WIDTH_PX = 2000;

let loaded: Promise<typeof import("@resvg/resvg-wasm")> | undefined;

/** It can be started once only. */
async function load(): Promise<typeof import("@resvg/resvg-wasm")> {
  const resvg = await import("@resvg/resvg-wasm");
  await resvg.initWasm(await readFile(fileURLToPath(import.meta.resolve("@resvg/resvg-wasm/index_bg.wasm"))));
  return resvg;
}

/** Every figure of a report as PNG; the same report gives the same bytes. */
export async function drawPictures(
  { blocks }: StudyReport,
  { files }: Typefaces,
): Promise<readonly { readonly name: string; readonly content: Uint8Array }[]> {
  loaded ??= load();
  const { Resvg } = await loaded;
  const fontBuffers = [...files.regular, ...files.bold].map(unpackFont);
  return blocks.flatMap((block) => {
    if (block.type !== "figure") return [];
    const drawn = new Resvg(renderSvg(block.page, { title: block.caption }), {
      background: "#ffffff",
      fitTo: { mode: "width", value: WIDTH_PX },
      font: { fontBuffers, defaultFontFamily: "Atkinson Hyperlegible Next" },
    });
    const picture = drawn.render();
    const content = picture.asPng();
    picture.free();
    drawn.free();
    return [{ name: `${block.name}.png`, content }];
  });
}
