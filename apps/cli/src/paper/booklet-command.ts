import { draftFormulary } from "@steelyard/formulary";
import { drawBooklet, emergencyProblems } from "@steelyard/paper";
import { Command } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { keepHeapSmall } from "./keep-heap-small.ts";
import { loadPaper, type PaperOptions, sheetOf, withPaperOptions } from "./paper-options.ts";
import { problemOf, problemsHelp } from "./problem-option.ts";
import { formatOf, writePaper } from "./write-paper.ts";

interface BookletOptions extends PaperOptions {
  readonly problem?: readonly string[];
}

/** `steelyard paper booklet --formulary f.json --problem arrest shock -o booklet.pdf`. */
export function createBookletCommand(): Command {
  return withPaperOptions(
    new Command("booklet").description("Doses in mL, infusions, equipment and signs, by weight."),
    "a4, a3 or letter",
  )
    .option("--problem <id...>", problemsHelp())
    .action(printBooklet);
}

async function printBooklet(options: BookletOptions): Promise<void> {
  formatOf(options.output);
  const size = sheetOf(options.page);
  const problems = options.problem === undefined ? emergencyProblems : options.problem.map(problemOf);
  const given = { ...options, formulary: options.formulary ?? "draft" };
  const loaded = await loadPaper({ paper: "booklet", choices: { size, problems }, options: given });
  const formulary = loaded.formulary ?? draftFormulary;
  if (!formulary.medicines.some(({ uses }) => uses.some(({ problem }) => problems.includes(problem)))) {
    throw new CommandFailure(
      EXIT.notServed,
      `The formulary has no dose for ${problems.join(", ")}. Nothing was written.`,
    );
  }
  const onPage = keepHeapSmall();
  const onStep = progress();
  const drawing = drawBooklet({ ...loaded.context, size, formulary, problems, onStep });
  await writePaper({ drawing, output: options.output, loaded, onPage });
}

/** On a terminal, one line that counts the weights; in a file nothing. */
function progress(): (done: number, of: number) => void {
  if (!process.stderr.isTTY) return () => {};
  return (done, of) => process.stderr.write(`\r${done} of ${of} weights${done === of ? "\n" : ""}`);
}
