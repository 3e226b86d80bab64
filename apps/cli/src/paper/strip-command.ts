import { drawStrip, type StripMedium } from "@steelyard/paper";
import { Command } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { loadPaper, type PaperOptions, sheetOf, withPaperOptions } from "./paper-options.ts";
import { formatOf, writePaper } from "./write-paper.ts";

interface StripOptions extends PaperOptions {
  readonly rollWidthMm?: string;
}

/** The widest roll that large-format printers take is 1,118 mm (44 in; common practice). */
const widestRollMm = 1118;

/** `steelyard paper strip --page a4 -o strip.pdf`. */
export function createStripCommand(): Command {
  return withPaperOptions(
    new Command("strip").description("The length strip, 0 to 200 cm at 1:1, with lines of equal weight."),
    "a4, a3, letter or roll",
  )
    .option("--roll-width-mm <mm>", "width of the roll, with --page roll")
    .action(printStrip);
}

async function printStrip(options: StripOptions): Promise<void> {
  formatOf(options.output);
  const medium = mediumOf(options);
  const loaded = await loadPaper({ paper: "strip", choices: { medium }, options });
  const drawing = drawStrip({ ...loaded.context, medium, site: loaded.site });
  if (!drawing.ok) {
    const { widthMm, leastMm } = drawing.error;
    throw new CommandFailure(
      EXIT.notServed,
      `${widthMm} mm is too narrow for the chart, whose lines could not be told apart: it needs ${leastMm} mm or more. Nothing was written.`,
    );
  }
  await writePaper({ drawing: drawing.value, output: options.output, loaded });
}

function mediumOf({ page, rollWidthMm }: StripOptions): StripMedium {
  if (page.toLowerCase() !== "roll") {
    if (rollWidthMm !== undefined) {
      throw new CommandFailure(
        EXIT.wrongUsage,
        "--roll-width-mm goes with --page roll. Nothing was written.",
      );
    }
    return { sheet: sheetOf(page, ["roll"]) };
  }
  const width = Number(rollWidthMm ?? "");
  if (rollWidthMm === undefined || rollWidthMm.trim() === "" || !Number.isFinite(width) || width <= 0) {
    throw new CommandFailure(
      EXIT.wrongUsage,
      "--page roll needs the width of the roll, as in --roll-width-mm 297. Nothing was written.",
    );
  }
  if (width > widestRollMm) {
    throw new CommandFailure(
      EXIT.notServed,
      `A roll is at most ${widestRollMm} mm wide: ${rollWidthMm} mm was given.`,
    );
  }
  return { rollWidthMm: width };
}
