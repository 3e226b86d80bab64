import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** Whether poppler's tools are here; `npm test` brings them on Debian. */
export const hasPoppler: boolean = ["pdftoppm", "pdftotext"].every(
  (tool) => spawnSync(tool, ["-v"], { stdio: "ignore" }).error === undefined,
);

/** A part of a page as pixels, 0 black to 255 white. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

export interface PixelBox {
  readonly page: number;
  readonly dpi: number;
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Renders a part of a page with poppler. */
export function rasterise(pdf: Uint8Array, box: PixelBox): Pixels {
  const { page, dpi, xMm, yMm, widthMm, heightMm } = box;
  const px = (mm: number): string => String(Math.round((mm * dpi) / 25.4));
  const args = ["-gray", "-r", String(dpi), "-f", String(page), "-l", String(page), "-singlefile"];
  const crop = ["-x", px(xMm), "-y", px(yMm), "-W", px(widthMm), "-H", px(heightMm)];
  return withPdf(pdf, (path, folder) => {
    run("pdftoppm", [...args, ...crop, path, join(folder, "out")]);
    return readPgm(readFileSync(join(folder, "out.pgm")));
  });
}

/** The text of one page, or of all, as poppler reads it. */
export function textOf(pdf: Uint8Array, page?: number): string {
  const pages = page === undefined ? [] : ["-f", String(page), "-l", String(page)];
  return withPdf(pdf, (path) => run("pdftotext", ["-raw", ...pages, path, "-"]));
}

function withPdf<T>(pdf: Uint8Array, use: (path: string, folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), "steelyard-paper-"));
  try {
    const path = join(folder, "in.pdf");
    writeFileSync(path, pdf);
    return use(path, folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function run(tool: string, args: readonly string[]): string {
  const { status, stdout, stderr, error } = spawnSync(tool, args, { encoding: "utf8", maxBuffer: 1e8 });
  if (error !== undefined || status !== 0) throw new Error(`${tool} failed: ${error?.message ?? stderr}`);
  return stdout;
}

/** A binary greymap: "P5", width, height, 255, then the bytes. */
function readPgm(file: Uint8Array): Pixels {
  const head = /^P5\s+(?:#.*\n)?(\d+)\s+(\d+)\s+255\s/.exec(
    new TextDecoder("latin1").decode(file.subarray(0, 64)),
  );
  if (head === null) throw new Error("Cannot read the picture as it is no greymap");
  const [width = 0, height = 0] = head.slice(1).map(Number);
  return { width, height, grey: file.subarray(head[0].length, head[0].length + width * height) };
}
