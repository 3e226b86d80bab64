import { drawReadingTest } from "@steelyard/paper";
import { Command } from "commander";
import { loadPaper, type PaperOptions, sheetOf, withPaperOptions } from "./paper-options.ts";
import { formatOf, writePaper } from "./write-paper.ts";

/** `steelyard paper reading-test --page a4 -o test.pdf`. */
export function createReadingTestCommand(): Command {
  return withPaperOptions(
    new Command("reading-test").description("Ten invented children to read off the strip, with the answers."),
    "a4, a3 or letter",
  ).action(printReadingTest);
}

async function printReadingTest(options: PaperOptions): Promise<void> {
  formatOf(options.output);
  const size = sheetOf(options.page);
  const loaded = await loadPaper({ paper: "reading-test", choices: { size }, options });
  const drawing = drawReadingTest({ ...loaded.context, size, site: loaded.site });
  await writePaper({ drawing, output: options.output, loaded });
}
