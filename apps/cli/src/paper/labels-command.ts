import { drawLabels, labelSheetOf, labelSheets } from "@steelyard/paper";
import { Command } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { type ChildPaperOptions, loadGivenChild, withChildOptions } from "./given-child.ts";
import { formatOf, writePaper } from "./write-paper.ts";

const known = labelSheets.map(({ id }) => id).join(", ");

/** `steelyard paper labels --length-cm 136 --arm-mm 190 --problem arrest --page 70x37 -o labels.pdf`. */
export function createLabelsCommand(): Command {
  return withChildOptions(
    new Command("labels").description("Syringe labels for the doses of one child."),
    `a label sheet by the size of its labels: ${known}`,
  )
    .option("--class-colours", "the class colours of ISO 26825 beside the words; none without it")
    .action(printLabels);
}

async function printLabels(options: ChildPaperOptions & { readonly classColours?: true }): Promise<void> {
  formatOf(options.output);
  // The default of the other papers is no label sheet.
  const sheet = labelSheetOf(options.page === "a4" ? "70x37" : options.page);
  if (!sheet.ok) {
    throw new CommandFailure(
      EXIT.wrongUsage,
      `There is no label sheet "${options.page}": use ${known}. Nothing was written.`,
    );
  }
  const classColours = options.classColours === true;
  const choices = { sheet: sheet.value.id, classColours };
  const { loaded, report, problems } = await loadGivenChild({ paper: "labels", choices, options });
  const drawing = drawLabels({ ...loaded.context, sheet: sheet.value, report, problems, classColours });
  await writePaper({ drawing, output: options.output, loaded });
}
