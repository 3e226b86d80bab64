import { recogniseSlips, weighChild } from "@steelyard/core/body";
import { computeReport } from "@steelyard/core/child";
import { readBurnPercent } from "@steelyard/core/entry";
import {
  describeBodyIssue,
  describeBurnPercentIssue,
  describeEntryNotice,
  describeSlip,
} from "@steelyard/core/wording";
import type { Command } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import {
  loadSheetFormulary,
  type SheetFormularyOptions,
  withFormularyOptions,
} from "../formulary/sheet-formulary.ts";
import { EXIT_STATUS_HELP, helpCautions } from "../help-text.ts";
import { describeSite } from "../site/describe-site.ts";
import { SOFTWARE_VERSION } from "../software-version.ts";
import { wrap } from "../wrap.ts";
import { formatChildReport } from "./format-child-report.ts";
import { otherDoses } from "./other-doses.ts";
import {
  type ChildTexts,
  once,
  type ReadChild,
  readChild,
  unitHint,
  withChildOptions,
} from "./read-child.ts";

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
  steelyard child --length-cm 136 --arm-mm 190 --formulary signed.json
  steelyard child --length-cm 136 --arm-mm 190 --choose phenytoin.seizure=1-5-g
  steelyard child --length-cm 136 --arm-mm 190 --burn-percent 18

${EXIT_STATUS_HELP}`;

/** `steelyard child --length-cm 136 --arm-mm 190`. */
export function defineChildCommand(command: Command): void {
  withFormularyOptions(withChildOptions(command))
    .option(
      "--burn-percent <number>",
      "burnt share of the body surface (% TBSA), reddening not counted",
      once,
    )
    .option("--json", "print the report as JSON")
    .addHelpText("after", () => `${HELP}\n${helpCautions()}`)
    .action(printChild);
}

type ChildOptions = ChildTexts &
  SheetFormularyOptions & { readonly json?: true; readonly burnPercent?: string };

async function printChild({
  json,
  formulary,
  overlay,
  choose,
  burnPercent: burnText,
  ...texts
}: ChildOptions): Promise<void> {
  const burnPercent = burnText === undefined ? undefined : burnPercentOrFail(burnText);
  const read = await readChild(texts, { example: "steelyard child --length-cm 136 --arm-mm 190" });
  const loaded = await loadSheetFormulary({
    ...(formulary !== undefined && { formulary }),
    ...(overlay && { overlay }),
    ...(choose && { choose }),
  });
  const { measurements, notices, site, next } = read;
  const child = weighOrFail(read);
  const input = {
    child,
    formulary: loaded.formulary,
    choices: loaded.choices,
    ...(burnPercent !== undefined && { burnPercent }),
    ...(site === undefined ? {} : { site }),
    settles: next,
    versions: { software: SOFTWARE_VERSION },
  };
  const report = computeReport(input);
  // The likeliest slip alone: an outlier without a correction is what the report's own warnings are for.
  const [slip] = recogniseSlips(measurements, site === undefined ? {} : { site });
  const notes = [
    ...notices.map((notice) => describeEntryNotice(notice)),
    ...(slip === undefined || slip.type === "outlier" ? [] : [describeSlip(slip)]),
    ...(site === undefined ? [] : [describeSite(site)]),
    ...loaded.notes,
  ];
  if (json) {
    for (const note of notes) process.stderr.write(`${wrap(note, { hanging: "  " })}\n`);
    const { versions, ...value } = report;
    const { fingerprint, signOff } = loaded;
    const { name, role, date } = signOff ?? {};
    const named = {
      ...versions,
      formularyFingerprint: fingerprint,
      ...(signOff && { formularySignOff: { name, role, date } }),
    };
    process.stdout.write(
      `${JSON.stringify({ ...value, nextMeasurements: next, versions: named }, undefined, 2)}\n`,
    );
  } else {
    const others = otherDoses(report.sheet, (choices) => computeReport({ ...input, choices }).sheet);
    process.stdout.write(formatChildReport({ report, notes, next, loaded, others }));
  }
}

/** The burnt share of the body surface, or why what was given is none. */
function burnPercentOrFail(text: string): number {
  const read = readBurnPercent(text);
  if (read.ok) return read.value;
  const status = read.error.type === "out-of-limits" ? EXIT.notServed : EXIT.wrongUsage;
  throw new CommandFailure(
    status,
    `--burn-percent: ${describeBurnPercentIssue(read.error)}\nNothing was computed.`,
  );
}

/** The weights of the child, or why none can be had. */
export function weighOrFail({
  measurements,
  site,
}: ReadChild): Extract<ReturnType<typeof weighChild>, { ok: true }>["value"] {
  const child = weighChild({ measurements, ...(site === undefined ? {} : { site }) });
  if (child.ok) return child.value;
  const { error } = child;
  const hint =
    error.type === "measurement-out-of-range" && error.proposal
      ? unitHint(error.measurement, `${error.value} ${error.proposal.from}`)
      : [];
  throw new CommandFailure(EXIT.notServed, [describeBodyIssue(error), ...hint].join("\n"));
}
