import { finished } from "node:stream/promises";
import {
  calibrateSite,
  defaultBodyModel,
  defaultMeasurementErrors,
  type MeasurementErrors,
  readMeasurementErrors,
  writeSiteProfile,
} from "@steelyard/core/body";
import { cautionBlock, describeCalibrationIssue, describeFieldFault } from "@steelyard/core/wording";
import type { Command } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { EXIT_STATUS_HELP, helpCautions } from "../help-text.ts";
import { readJsonFile } from "../site/read-json-file.ts";
import { SOFTWARE_VERSION } from "../software-version.ts";
import { explainInterruption } from "../weigh/explain-interruption.ts";
import { openSink } from "../weigh/open-sink.ts";
import { openSource } from "../weigh/open-source.ts";
import { showProgress } from "../weigh/progress.ts";
import { emptyTally } from "../weigh/tally.ts";
import { lookAlikes } from "../weigh/weigh-columns.ts";
import { wrap } from "../wrap.ts";
import { isCalendarDate, today } from "./calendar-date.ts";
import { describeRows } from "./describe-rows.ts";
import { fingerprintRows } from "./fingerprint-rows.ts";
import { formatCalibration } from "./format-calibration.ts";
import { readWeighedRows } from "./read-weighed-rows.ts";

const HELP = `
Columns that are read: weight_kg, the weight from the scale (required), date
(YYYY-MM-DD), and all that weigh reads (steelyard weigh --help), any subset in
any order with a length or an age in it. One row a child; at least 20 children,
better 100. A row that cannot be used is left out and counted by its reason.

The profile is a JSON file for the option --site of child and weigh. It holds
how the children of your site differ from those of the body model, and what
that rests on; no row of yours is in it. What was found is printed on standard
error.

Examples:
  steelyard calibrate rows.csv -o site.json --name "Larch ward"
  steelyard child --length-cm 136 --arm-mm 190 --site site.json

${EXIT_STATUS_HELP}`;

interface CalibrateCommandOptions {
  readonly output: string;
  readonly name: string;
  readonly date?: string;
  readonly errors?: string;
}

/** `steelyard calibrate rows.csv -o site.json`. */
export function defineCalibrateCommand(command: Command): void {
  command
    .argument("<rows.csv>", 'the file to read; "-" is standard input')
    .option("-o, --output <site.json>", 'the profile to write; "-" is standard output', "-")
    .option("--name <name>", "what the site is called", "unnamed site")
    .option("--date <YYYY-MM-DD>", "the day the profile is made, in place of today")
    .option("--errors <errors.json>", "your site's own measurement errors")
    .addHelpText("after", () => `${HELP}\n${helpCautions()}`)
    .action(calibrateFile);
}

async function calibrateFile(input: string, options: CalibrateCommandOptions): Promise<void> {
  const { output, date: createdOn = today() } = options;
  const name = options.name.trim();
  if (name === "" || name.length > 200)
    throw wrongUsage("--name: give the site a name of 1 to 200 characters.");
  if (!isCalendarDate(createdOn)) throw wrongUsage(`--date: "${createdOn}" is no day such as 2026-11-25.`);
  const errors = options.errors === undefined ? defaultMeasurementErrors : await loadErrors(options.errors);
  const source = await openSource(input);
  const sink = await openSink(output, input);
  const tally = emptyTally();
  const abort = new AbortController();
  const stop = (): void => {
    abort.abort();
    source.close();
  };
  process.once("SIGINT", stop).once("SIGTERM", stop);
  const endProgress = process.stderr.isTTY ? showProgress({ source, tally }) : () => {};
  try {
    const { signal } = abort;
    const rows = await readWeighedRows({ source, tally, errors, signal, onHeader: sayWhatIsNotRead });
    endProgress();
    say(describeRows({ tally, rows }));
    const calibration = calibrateSite(rows.children, { errors });
    if (!calibration.ok) {
      throw new CommandFailure(
        EXIT.notServed,
        `${describeCalibrationIssue(calibration.error)}\nNo profile was written.`,
      );
    }
    const profile = writeSiteProfile(calibration.value, {
      identity: { name, createdOn, rowsSha256: fingerprintRows(rows.children), signed: false },
      leftOut: Array.from(tally.marked, ([reason, count]) => ({ reason, rows: count })),
      ...(rows.dates === undefined ? {} : { dates: rows.dates }),
      software: SOFTWARE_VERSION,
    });
    signal.throwIfAborted();
    const text = `${JSON.stringify(profile, undefined, 2)}\n`;
    if (sink.stream === process.stdout) sink.stream.write(text);
    else {
      sink.stream.end(text);
      await finished(sink.stream);
    }
    await sink.commit();
    process.stderr.write(`\n${formatCalibration(calibration.value)}\n`);
  } catch (error) {
    endProgress();
    sink.stream.destroy();
    await sink.discard();
    throw explainInterruption({ error, name: sink.name, signal: abort.signal });
  } finally {
    process.off("SIGINT", stop).off("SIGTERM", stop);
  }
  const { title, lines } = cautionBlock();
  say([
    `steelyard ${SOFTWARE_VERSION}, body model ${defaultBodyModel().version}.`,
    `${title}: ${lines.join(" ")}`,
  ]);
}

function wrongUsage(message: string): CommandFailure {
  return new CommandFailure(EXIT.wrongUsage, message);
}

async function loadErrors(path: string): Promise<MeasurementErrors> {
  const errors = readMeasurementErrors(await readJsonFile(path));
  if (errors.ok) return errors.value;
  const faults = errors.error.map((fault) => describeFieldFault(fault));
  throw new CommandFailure(EXIT.notServed, [`Cannot use ${path}:`, ...faults].join("\n"));
}

function sayWhatIsNotRead(plan: Parameters<typeof lookAlikes>[0]): void {
  if (plan.passedOn.length > 0) say([`Not read: ${plan.passedOn.join(", ")}.`]);
  for (const { name, column } of lookAlikes(plan)) {
    say([`Column "${name}" is not read. If it is meant to be, name it ${column}, in that unit.`]);
  }
}

function say(sentences: readonly string[]): void {
  for (const sentence of sentences) process.stderr.write(`${wrap(sentence, { hanging: "  " })}\n`);
}
