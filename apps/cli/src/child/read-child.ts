import {
  type MeasurementName,
  type Measurements,
  type NextMeasurement,
  nextMeasurements,
  type StoredSiteProfile,
} from "@steelyard/core/body";
import {
  type EntryField,
  type EntryIssue,
  type EntryNotice,
  type EntryTexts,
  readMeasurements,
} from "@steelyard/core/entry";
import { describeEntryIssue } from "@steelyard/core/wording";
import { type Command, InvalidArgumentError, Option } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { loadSite } from "../site/load-site.ts";
import { SITE_OPTION } from "../site/site-option.ts";
import { CHILD_OPTIONS, optionOf } from "./child-options.ts";

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

/** The texts of the measurements that were given, and the calibration of the site. */
export type ChildTexts = { readonly [F in EntryField]?: string | true } & { readonly site?: string };

export interface ReadChild {
  readonly measurements: Measurements;
  readonly notices: readonly EntryNotice[];
  readonly site?: StoredSiteProfile;
  /** What one more measurement would buy; empty for a weight from a scale. */
  readonly next: readonly NextMeasurement[];
}

/** The options that say who the child is, the same for every command about one child. */
export function withChildOptions(command: Command): Command {
  for (const { flag, argument, field, help } of CHILD_OPTIONS) {
    // The attribute name is what commander makes of the flag; ours is the field.
    const option = new Option(argument === undefined ? flag : `${flag} ${argument}`, help);
    option.attributeName = () => field;
    command.addOption(argument === undefined ? option : option.argParser(once));
  }
  return command.option(SITE_OPTION.flags, SITE_OPTION.help);
}

/** Two values for one measurement are never chosen between. */
export function once(value: string, previous: string | undefined): string {
  if (previous !== undefined) {
    throw new InvalidArgumentError(`It is given twice, as "${previous}" and "${value}": give one.`);
  }
  return value;
}

/** The measurements from the texts of the options; `example` is what to type where none is given. */
export async function readChild(
  { site: path, ...options }: ChildTexts,
  { example }: { readonly example: string },
): Promise<ReadChild> {
  const given = Object.entries(options).map(
    ([field, text]) => [field, text === true ? "yes" : text] as [EntryField, string],
  );
  const texts: EntryTexts = Object.fromEntries(given);
  if (given.length === 0) {
    throw new CommandFailure(EXIT.wrongUsage, `No measurement was given. Give a length, as in: ${example}`);
  }
  const empty = given.find(([, text]) => text.trim() === "");
  if (empty) throw entryFailure([{ type: "empty", field: empty[0] }]);
  const read = readMeasurements(texts);
  if (!read.ok) throw entryFailure(read.error);
  const { measurements, notices } = read.value;
  const site = path === undefined ? undefined : await loadSite(path);
  // A weight from a scale leaves nothing to narrow.
  const next =
    measurements.scaleKg === undefined
      ? nextMeasurements(measurements, site === undefined ? {} : { site })
      : [];
  return { measurements, notices, ...(site === undefined ? {} : { site }), next };
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
export function unitHint(field: EntryField | MeasurementName, text: string): string[] {
  return [`If so, give the unit: ${optionOf(field)} "${text}"`];
}
