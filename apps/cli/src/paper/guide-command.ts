import { drawGuide } from "@steelyard/paper";
import { Command } from "commander";
import { loadPaper, type PaperOptions, sheetOf, withPaperOptions } from "./paper-options.ts";
import { formatOf, writePaper } from "./write-paper.ts";

/** `steelyard paper guide --page a3 -o guide.pdf`. */
export function createGuideCommand(): Command {
  return withPaperOptions(
    new Command("guide").description("A poster of how every measurement is taken."),
    "a4, a3 or letter",
  ).action(printGuide);
}

async function printGuide(options: PaperOptions): Promise<void> {
  formatOf(options.output);
  const size = sheetOf(options.page);
  const loaded = await loadPaper({ paper: "guide", choices: { size }, options });
  await writePaper({ drawing: drawGuide({ ...loaded.context, size }), output: options.output, loaded });
}
