import { drawArmBand } from "@steelyard/paper";
import { Command } from "commander";
import { loadPaper, type PaperOptions, sheetOf, withPaperOptions } from "./paper-options.ts";
import { formatOf, writePaper } from "./write-paper.ts";

/** `steelyard paper arm-band --page a4 -o arm-band.pdf`. */
export function createArmBandCommand(): Command {
  return withPaperOptions(
    new Command("arm-band").description(
      "A tape in mm to cut out, with the finder of the middle of the upper arm.",
    ),
    "a4, a3 or letter",
  ).action(printArmBand);
}

async function printArmBand(options: PaperOptions): Promise<void> {
  formatOf(options.output);
  const size = sheetOf(options.page);
  const loaded = await loadPaper({ paper: "arm-band", choices: { size }, options });
  const drawing = drawArmBand({ ...loaded.context, size });
  await writePaper({ drawing, output: options.output, loaded });
}
