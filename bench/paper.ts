/**
 * How long a paper takes from nothing to bytes, how large it is, and the most memory that a process which makes nothing else holds. Run:
 * `node bench/paper.ts`, or `node bench/paper.ts strip` for those whose name has that word.
 * Budgets: strip 1 s and 300 kB, booklet of 80 pages 5 s, memory 300 MB. The peer is the PDF library writing the same straight lines and texts in one
 * flat list, in the same process: the ratio is what to compare; times hold for one machine on one day.
 */
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { defaultBodyModel } from "@steelyard/core/body";
import { draftFormulary } from "@steelyard/formulary";
import {
  createImprint,
  createTypefaces,
  type Drawing,
  drawArmBand,
  drawBooklet,
  drawStrip,
  drawWeightGrid,
  ENGLISH_PAPER,
  emergencyProblems,
  type Item,
  pageSizes,
  renderPdf,
} from "@steelyard/paper";

const fonts = createRequire(import.meta.url);
const folder = "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next";
const read = (name: string): Uint8Array => readFileSync(fonts.resolve(`${folder}-${name}-normal.woff`));
const typefaces = createTypefaces({
  regular: [read("latin-400"), read("latin-ext-400")],
  bold: [read("latin-700"), read("latin-ext-700")],
});
const imprint = await createImprint({
  paper: "bench",
  choices: {},
  softwareVersion: "0.1.0",
  modelVersion: defaultBodyModel().version,
  madeOn: "2026-11-25",
  expiresOn: "2027-11-25",
  sha256: (text) => createHash("sha256").update(text).digest("hex"),
});
if (!imprint.ok) throw new Error(imprint.error.type);
const context = { typefaces, messages: ENGLISH_PAPER, imprint: imprint.value };
const rendering = { typefaces, madeOn: "2026-11-25", creator: "bench" };

const papers: Readonly<Record<string, () => Drawing>> = {
  "strip, A4": () => strip({ sheet: pageSizes.a4 }),
  "strip, A3": () => strip({ sheet: pageSizes.a3 }),
  "strip, Letter": () => strip({ sheet: pageSizes.letter }),
  "strip, roll of 610 mm": () => strip({ rollWidthMm: 610 }),
  "arm band, A4": () => drawArmBand({ ...context, size: pageSizes.a4 }),
  "grid, A4": () => drawWeightGrid({ ...context, size: pageSizes.a4, girths: "arm" }),
  "grid with waist, A4": () => drawWeightGrid({ ...context, size: pageSizes.a4, girths: "arm-and-waist" }),
  "booklet of all emergencies, A4": () =>
    drawBooklet({
      ...context,
      size: pageSizes.a4,
      formulary: draftFormulary,
      problems: emergencyProblems,
    }),
};

let collectNowAndThen: ((done: number) => void) | undefined;
const [word = "", only] = process.argv.slice(2);
const chosen = Object.entries(papers).filter(([name]) =>
  only === undefined ? name.includes(word) : name === only,
);
for (const [name, draw] of chosen) {
  if (only === undefined)
    spawnSync(process.execPath, [process.argv[1] ?? "", "only", name], { stdio: "inherit" });
  else await measure(name, draw);
}

/** One paper from nothing, as the command makes it. */
async function measure(name: string, draw: () => Drawing): Promise<void> {
  if (name.startsWith("booklet")) collectNowAndThen = collector();
  const start = performance.now();
  const drawing = draw();
  const drawn = performance.now();
  const bytes = await renderPdf(drawing, { ...rendering, onPage: (page) => collectNowAndThen?.(page) });
  const done = performance.now();
  const peak = peakMb();
  const plain = await timePlain(drawing);
  console.log(
    `${name}: ${Math.round(done - start)} ms (${Math.round(drawn - start)} to draw), ${Math.round(bytes.length / 1000)} kB, ` +
      `${drawing.pages.length} pages; ${((done - start) / plain).toFixed(1)} times the PDF library alone; ${peak} MB at most`,
  );
}

/** As the command does, to stay small. */
function collector(): (done: number) => void {
  setFlagsFromString("--semi-space-growth-factor=1");
  setFlagsFromString("--expose-gc");
  const collect = runInNewContext("gc") as () => void;
  return (done) => {
    if (done % 6 === 0) collect();
  };
}

/** The most memory this process has held. */
function peakMb(): number {
  return Math.round(process.resourceUsage().maxRSS / 1024);
}

function strip(medium: Parameters<typeof drawStrip>[0]["medium"]): Drawing {
  const drawing = drawStrip({ ...context, medium });
  if (!drawing.ok) throw new Error(drawing.error.type);
  return drawing.value;
}

/** The peer: the same count of straight lines and texts, in one flat list. */
async function timePlain(drawing: Drawing): Promise<number> {
  const pages = drawing.pages.map((page) => ({ ...page, items: page.items.flatMap(leaves) }));
  const start = performance.now();
  await renderPdf({ ...drawing, pages }, rendering);
  return performance.now() - start;
}

function leaves(item: Item): readonly Item[] {
  if (item.kind === "group") return item.items.flatMap(leaves);
  return item.kind === "path" ? [] : [item];
}
