import { drawChildSheet } from "@steelyard/paper";
import { Command } from "commander";
import { type ChildPaperOptions, loadGivenChild, withChildOptions } from "./given-child.ts";
import { sheetOf } from "./paper-options.ts";
import { formatOf, writePaper } from "./write-paper.ts";

/** `steelyard paper child --length-cm 136 --arm-mm 190 --problem anaphylaxis -o child.pdf`. */
export function createChildSheetCommand(): Command {
  return withChildOptions(
    new Command("child").description("One child: weight, doses of the chosen problems, working on the back."),
    "a4, a3 or letter",
  ).action(printChildSheet);
}

async function printChildSheet(options: ChildPaperOptions): Promise<void> {
  formatOf(options.output);
  const size = sheetOf(options.page);
  const { loaded, ...child } = await loadGivenChild({ paper: "child", choices: { size }, options });
  const drawing = drawChildSheet({ ...loaded.context, size, ...child });
  await writePaper({ drawing, output: options.output, loaded });
}
