import { defaultBodyModel } from "@steelyard/core/body";
import { cautionBlock } from "@steelyard/core/wording";
import type { Command } from "commander";
import { EXIT_STATUS_HELP, helpCautions } from "../help-text.ts";
import { describeSite } from "../site/describe-site.ts";
import { loadSite } from "../site/load-site.ts";
import { SITE_OPTION } from "../site/site-option.ts";
import { SOFTWARE_VERSION } from "../software-version.ts";
import { explainInterruption } from "./explain-interruption.ts";
import { openSink } from "./open-sink.ts";
import { openSource } from "./open-source.ts";
import { showProgress } from "./progress.ts";
import { describeTally, emptyTally } from "./tally.ts";
import { type ColumnPlan, lookAlikes } from "./weigh-columns.ts";
import { weighStream } from "./weigh-stream.ts";

const HELP = `
Columns that are read, any subset in any order (a length or an age is required):
  lying_length_cm, standing_height_cm, or knee_height_cm, tibia_cm, ulna_cm
  arm_mm, waist_cm, thigh_cm, calf_cm, head_cm
  sex (f or m), age_months, build, carer_kg, earlier_kg, earlier_age_months
  posture, people, length_readings, arm_step_mm, arm_readings
  missing_limb, oedema (yes or no), pregnant (yes or no)
Columns that are added:
  total_kg, low95_kg, high95_kg, ideal_kg, notes
All other columns are passed on as they are. A row that cannot be served is
marked in notes and never stops the file; a likely slip of unit, digits or
fields is named there with what was perhaps meant, and not applied. Standing
height is taken as a lying length 0.7 cm longer; where both are given the
lying length is used. Commas, semicolons or tabs part the cells; semicolons go
with decimal commas.

Examples:
  steelyard weigh survey.csv -o weighed.csv
  steelyard weigh survey.csv -o weighed.csv --site site.json
  gunzip -c survey.csv.gz | steelyard weigh - > weighed.csv

${EXIT_STATUS_HELP}`;

interface WeighOptions {
  readonly output: string;
  readonly progress?: true;
  readonly site?: string;
}

/** `steelyard weigh in.csv -o out.csv`. */
export function defineWeighCommand(command: Command): void {
  command
    .argument("<in.csv>", 'the file to read; "-" is standard input')
    .option("-o, --output <out.csv>", 'the file to write; "-" is standard output', "-")
    .option(SITE_OPTION.flags, SITE_OPTION.help)
    .option("--progress", "show progress on standard error even where that is no terminal")
    .addHelpText("after", () => `${HELP}\n${helpCautions()}`)
    .action(weighFile);
}

async function weighFile(input: string, { output, progress, site: path }: WeighOptions): Promise<void> {
  const model = defaultBodyModel();
  const site = path === undefined ? undefined : await loadSite(path);
  const source = await openSource(input);
  const sink = await openSink(output, input);
  const tally = emptyTally();
  const abort = new AbortController();
  const stop = (): void => {
    abort.abort();
    source.close();
  };
  process.once("SIGINT", stop).once("SIGTERM", stop);
  const endProgress = process.stderr.isTTY || progress ? showProgress({ source, tally }) : () => {};
  try {
    await weighStream({
      source,
      sink,
      tally,
      model,
      site,
      signal: abort.signal,
      onHeader: sayWhatIsPassedOn,
    });
    await sink.commit();
  } catch (error) {
    endProgress();
    await sink.discard();
    throw explainInterruption({ error, name: sink.name, signal: abort.signal });
  } finally {
    process.off("SIGINT", stop).off("SIGTERM", stop);
  }
  endProgress();
  const { title, lines } = cautionBlock();
  const said = [
    describeTally(tally),
    ...(site === undefined ? [] : [describeSite(site)]),
    `steelyard ${SOFTWARE_VERSION}, body model ${model.version}.`,
    `${title}: ${lines.join(" ")}`,
  ];
  process.stderr.write(`${said.join("\n")}\n`);
}

function sayWhatIsPassedOn(plan: ColumnPlan): void {
  if (plan.passedOn.length > 0) process.stderr.write(`Passed on as they are: ${plan.passedOn.join(", ")}.\n`);
  for (const { name, column } of lookAlikes(plan)) {
    process.stderr.write(
      `Column "${name}" is not read. If it is meant to be, name it ${column}, in that unit.\n`,
    );
  }
}
