import {
  type MeasurementName,
  type NextMeasurement,
  nextMeasurements,
  recogniseSlips,
} from "@steelyard/core/body";
import { computeChild } from "@steelyard/core/child";
import { type EntryField, type EntryIssue, type EntryTexts, readMeasurements } from "@steelyard/core/entry";
import {
  describeBodyIssue,
  describeEntryIssue,
  describeEntryNotice,
  describeSlip,
} from "@steelyard/core/wording";
import { draftFormulary } from "@steelyard/formulary";
import { Command, InvalidArgumentError, Option } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { EXIT_STATUS_HELP, helpCautions } from "../help-text.ts";
import { describeSite } from "../site/describe-site.ts";
import { loadSite } from "../site/load-site.ts";
import { SITE_OPTION } from "../site/site-option.ts";
import { SOFTWARE_VERSION } from "../versions.ts";
import { wrap } from "../wrap.ts";
import { CHILD_OPTIONS, optionOf } from "./child-options.ts";
import { formatChildReport } from "./format-child-report.ts";

const HELP = `
Any measurement is welcome; a length, an age or a scale weight is required. A
number may have a decimal comma and its own unit ("1.36 m", "53 in", "19 cm",
"62 lb").

Examples:
  steelyard child --length-cm 136 --arm-mm 190
  steelyard child --length-cm 136 --arm-mm 190 --sex f --age 9y --json
  steelyard child --weight-kg 28.4 --length-cm 136
  steelyard child --length-cm 136 --posture seated --people 1 --arm-mm 190
  steelyard child --length-cm 136 --arm-mm 190 --site site.json

${EXIT_STATUS_HELP}`;

/** Issues with a text that says nothing; all others are plausible inputs that cannot be served. */
const WRONG_USAGE: readonly EntryIssue["type"][] = [
  "empty",
  "not-a-number",
  "several-numbers",
  "ambiguous-separator",
  "unit-missing",
  "unit-unknown",
  "not-a-choice",
];

/** `steelyard child --length-cm 136 --arm-mm 190`. */
export function createChildCommand(): Command {
  const command = new Command("child").description(
    "One child: weight with its range, ideal weight and the sheet of doses.",
  );
  for (const { flag, argument, field, help } of CHILD_OPTIONS) {
    // The attribute name is what commander makes of the flag; ours is the field.
    const option = new Option(argument === undefined ? flag : `${flag} ${argument}`, help);
    option.attributeName = () => field;
    command.addOption(argument === undefined ? option : option.argParser(once));
  }
  return command
    .option(SITE_OPTION.flags, SITE_OPTION.help)
    .option("--json", "print the report as JSON")
    .addHelpText("after", () => `${HELP}\n${helpCautions()}`)
    .action(printChild);
}

/** Two values for one measurement are never chosen between. */
function once(value: string, previous: string | undefined): string {
  if (previous !== undefined) {
    throw new InvalidArgumentError(`It is given twice, as "${previous}" and "${value}": give one.`);
  }
  return value;
}

interface ChildOptions {
  readonly json?: true;
  readonly site?: string;
}

type Given = { readonly [F in EntryField]?: string | true };

async function printChild({ json, site: path, ...options }: Given & ChildOptions): Promise<void> {
  const given = Object.entries(options).map(
    ([field, text]) => [field, text === true ? "yes" : text] as [EntryField, string],
  );
  const texts: EntryTexts = Object.fromEntries(given);
  if (given.length === 0) {
    throw new CommandFailure(
      EXIT.wrongUsage,
      "No measurement was given. Give a length, as in: steelyard child --length-cm 136 --arm-mm 190",
    );
  }
  const empty = given.find(([, text]) => text.trim() === "");
  if (empty) throw entryFailure([{ type: "empty", field: empty[0] }]);
  const read = readMeasurements(texts);
  if (!read.ok) throw entryFailure(read.error);

  const { measurements, notices } = read.value;
  const site = path === undefined ? undefined : await loadSite(path);
  // A weight from a scale leaves nothing to narrow.
  const next: readonly NextMeasurement[] =
    measurements.scaleKg === undefined
      ? nextMeasurements(measurements, site === undefined ? {} : { site })
      : [];
  const report = computeChild({
    measurements,
    formulary: draftFormulary,
    ...(site === undefined ? {} : { site }),
    settles: next,
    versions: { software: SOFTWARE_VERSION },
  });
  if (!report.ok) {
    const hint =
      report.error.type === "measurement-out-of-range" && report.error.proposal
        ? unitHint(report.error.measurement, `${report.error.value} ${report.error.proposal.from}`)
        : [];
    throw new CommandFailure(EXIT.notServed, [describeBodyIssue(report.error), ...hint].join("\n"));
  }
  // The likeliest slip alone: an outlier without a correction is what the report's own warnings are for.
  const [slip] = recogniseSlips(measurements, site === undefined ? {} : { site });
  const notes = [
    ...notices.map((notice) => describeEntryNotice(notice)),
    ...(slip === undefined || slip.type === "outlier" ? [] : [describeSlip(slip)]),
    ...(site === undefined ? [] : [describeSite(site)]),
  ];
  if (json) {
    for (const note of notes) process.stderr.write(`${wrap(note, { hanging: "  " })}\n`);
    const { versions, ...value } = report.value;
    process.stdout.write(`${JSON.stringify({ ...value, nextMeasurements: next, versions }, undefined, 2)}\n`);
  } else {
    process.stdout.write(formatChildReport({ report: report.value, notes, next }));
  }
}

function entryFailure(issues: readonly EntryIssue[]): CommandFailure {
  const status = issues.some(({ type }) => WRONG_USAGE.includes(type)) ? EXIT.wrongUsage : EXIT.notServed;
  const sentences = issues.flatMap((issue) => {
    const [proposal] = "proposals" in issue ? issue.proposals : [];
    const hint =
      proposal === undefined
        ? []
        : proposal.type === "unit"
          ? unitHint(issue.field, `${proposal.typed} ${proposal.from}`)
          : [`If so: --length-cm ${proposal.lengthCm} --arm-mm ${proposal.armMm}`];
    return [`${optionOf(issue.field)}: ${describeEntryIssue(issue)}`, ...hint];
  });
  return new CommandFailure(status, [...sentences, "Nothing was computed."].join("\n"));
}

/** How to accept a proposal. */
function unitHint(field: EntryField | MeasurementName, text: string): string[] {
  return [`If so, give the unit: ${optionOf(field)} "${text}"`];
}
