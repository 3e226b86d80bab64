import { drawWeightGrid } from "@steelyard/paper";
import { Command } from "commander";
import { loadPaper, type PaperOptions, sheetOf, withPaperOptions } from "./paper-options.ts";
import { formatOf, writePaper } from "./write-paper.ts";

interface GridOptions extends PaperOptions {
  readonly waist?: true;
}

/** `steelyard paper grid --page a4 [--waist] -o grid.pdf`. */
export function createGridCommand(): Command {
  return withPaperOptions(
    new Command("grid").description("Total and ideal weight as a table by length and arm."),
    "a4, a3 or letter",
  )
    .option("--waist", "by arm and waist, a block for every 5 cm of length")
    .action(printGrid);
}

async function printGrid(options: GridOptions): Promise<void> {
  formatOf(options.output);
  const size = sheetOf(options.page);
  const girths = options.waist ? "arm-and-waist" : "arm";
  const loaded = await loadPaper({ paper: "grid", choices: { size, girths }, options });
  const drawing = drawWeightGrid({ ...loaded.context, size, girths, site: loaded.site });
  await writePaper({ drawing, output: options.output, loaded });
}
