import { defaultBodyModel } from "@steelyard/core/body";
import { cautionBlock } from "@steelyard/core/wording";
import { Command } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { fileFailure } from "../file-failure.ts";
import { EXIT_STATUS_HELP, helpCautions } from "../help-text.ts";
import { SOFTWARE_VERSION } from "../versions.ts";
import { openSink } from "./open-sink.ts";
import { openSource } from "./open-source.ts";
import { showProgress } from "./progress.ts";
import { describeTally, emptyTally } from "./tally.ts";
import { type ColumnPlan, lookAlikes } from "./weigh-columns.ts";
import { weighStream } from "./weigh-stream.ts";

const HELP = `
Columns that are read, any subset in any order (a length or an age is required):
  lying_length_cm, standing_height_cm, arm_mm, waist_cm, thigh_cm, calf_cm,
  sex (f or m), age_months, build, carer_kg
Columns that are added:
  total_kg, low95_kg, high95_kg, ideal_kg, notes
All other columns are passed on as they are. A row that cannot be served is
marked in notes and never stops the file. Standing height is taken as a lying
length 0.7 cm longer; where both are given the lying length is used. Commas,
semicolons or tabs part the cells; semicolons go with decimal commas.

Examples:
  steelyard weigh survey.csv -o weighed.csv
  gunzip -c survey.csv.gz | steelyard weigh - > weighed.csv

${EXIT_STATUS_HELP}`;

interface WeighOptions {
  readonly output: string;
  readonly progress?: true;
}

/** `steelyard weigh in.csv -o out.csv`. */
export function createWeighCommand(): Command {
  return new Command("weigh")
    .description("Weigh every child of a CSV file.")
    .argument("<in.csv>", 'the file to read; "-" is standard input')
    .option("-o, --output <out.csv>", 'the file to write; "-" is standard output', "-")
    .option("--progress", "show progress on standard error even where that is no terminal")
    .addHelpText("after", () => `${HELP}\n${helpCautions()}`)
    .action(weighFile);
}

async function weighFile(input: string, { output, progress }: WeighOptions): Promise<void> {
  const model = defaultBodyModel();
  const source = await openSource(input);
  const sink = await openSink(output, input);
  const tally = emptyTally();
  const abort = new AbortController();
  const stop = (): void => abort.abort();
  process.once("SIGINT", stop).once("SIGTERM", stop);
  const endProgress = process.stderr.isTTY || progress ? showProgress({ source, tally }) : () => {};
  try {
    await weighStream({ source, sink, tally, model, signal: abort.signal, onHeader: sayWhatIsPassedOn });
    await sink.commit();
  } catch (error) {
    endProgress();
    await sink.discard();
    throw explain(error, sink.name);
  }
  endProgress();
  const { title, lines } = cautionBlock();
  process.stderr.write(
    `${describeTally(tally)}\nsteelyard ${SOFTWARE_VERSION}, body model ${model.version}.\n${title}: ${lines.join(" ")}\n`,
  );
}

function sayWhatIsPassedOn(plan: ColumnPlan): void {
  if (plan.passedOn.length > 0) process.stderr.write(`Passed on as they are: ${plan.passedOn.join(", ")}.\n`);
  for (const { name, column } of lookAlikes(plan)) {
    process.stderr.write(
      `Column "${name}" is not read. If it is meant to be, name it ${column}, in that unit.\n`,
    );
  }
}

/** An interruption, a full disk: what the file system or the person did, as a sentence. */
function explain(error: unknown, name: string): unknown {
  if (error instanceof CommandFailure) return error;
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  if (code === "ABORT_ERR") return new CommandFailure(EXIT.notServed, "Interrupted; no result was written.");
  return code === undefined ? error : fileFailure("write", name, error);
}
