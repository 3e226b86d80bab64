import type { Command } from "commander";
import { EXIT_STATUS_HELP, helpCautions } from "../help-text.ts";
import { createArmBandCommand } from "./arm-band-command.ts";
import { createBookletCommand } from "./booklet-command.ts";
import { createChildSheetCommand } from "./child-sheet-command.ts";
import { createGridCommand } from "./grid-command.ts";
import { createGuideCommand } from "./guide-command.ts";
import { createLabelsCommand } from "./labels-command.ts";
import { createReadingTestCommand } from "./reading-test-command.ts";
import { createStripCommand } from "./strip-command.ts";

const HELP = `
Every page carries two proof rulers: print at 100 %, measure both, and throw the
sheet away if one is off. Without a formulary that is signed a page is a draft
and says so.

Examples:
  steelyard paper strip --page a4 -o strip.pdf
  steelyard paper strip --page roll --roll-width-mm 297 --site site.json -o strip.pdf
  steelyard paper strip --page letter --formulary signed.json -o strip.pdf
  steelyard paper arm-band -o arm-band.pdf
  steelyard paper grid --waist --site site.json -o grid.pdf
  steelyard paper booklet --formulary signed.json --problem arrest shock -o booklet.pdf
  steelyard paper child --length-cm 136 --arm-mm 190 --problem anaphylaxis -o child.pdf
  steelyard paper labels --length-cm 136 --arm-mm 190 --problem arrest --page 70x37 -o labels.pdf
  steelyard paper guide --page a3 -o guide.pdf
  steelyard paper reading-test --site site.json -o test.pdf

${EXIT_STATUS_HELP}`;

/** `steelyard paper strip | arm-band | grid | booklet | child | labels | guide | reading-test`. */
export function definePaperCommand(command: Command): void {
  command
    .helpCommand("help [command]", "print the help of a command")
    .addHelpText("after", () => `${HELP}\n${helpCautions()}`);
  const papers = [
    createStripCommand(),
    createArmBandCommand(),
    createGridCommand(),
    createBookletCommand(),
    createChildSheetCommand(),
    createLabelsCommand(),
    createGuideCommand(),
    createReadingTestCommand(),
  ];
  for (const paper of papers) command.addCommand(paper);
}
