import { type ChildReport, computeChild } from "@steelyard/core/child";
import type { ProblemId } from "@steelyard/core/dosing";
import { type EntryField, type EntryTexts, readMeasurements } from "@steelyard/core/entry";
import { formatNumber, type NumberStyle } from "@steelyard/core/units";
import {
  describeBodyIssue,
  describeEntryIssue,
  describeEntryNotice,
  describeField,
} from "@steelyard/core/wording";
import { draftFormulary } from "@steelyard/formulary";
import { type Command, Option } from "commander";
import { CHILD_OPTIONS, optionOf } from "../child/child-options.ts";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { SOFTWARE_VERSION } from "../software-version.ts";
import { type LoadedPaper, loadPaper, type PaperOptions, withPaperOptions } from "./paper-options.ts";
import { problemOf, problemsHelp } from "./problem-option.ts";

/** What was given of one child on the command line. */
export type ChildPaperOptions = PaperOptions & { readonly [F in EntryField]?: string | true } & {
  readonly problem: readonly string[];
};

/** The measurements that `steelyard child` takes, and which problems the paper is for. */
export function withChildOptions(command: Command, pages: string): Command {
  withPaperOptions(command, pages).requiredOption("--problem <id...>", problemsHelp());
  for (const { flag, argument, field, help } of CHILD_OPTIONS) {
    const option = new Option(argument === undefined ? flag : `${flag} ${argument}`, help);
    option.attributeName = () => field;
    command.addOption(option);
  }
  return command;
}

export interface GivenChild {
  readonly loaded: LoadedPaper;
  readonly report: ChildReport;
  readonly problems: readonly ProblemId[];
  /** What was measured, in words. */
  readonly measured: readonly string[];
  readonly notes: readonly string[];
}

/** Everything computed for the child that was given, or a failure that says which value cannot be served. */
export async function loadGivenChild(given: {
  readonly paper: string;
  readonly choices: Readonly<Record<string, unknown>>;
  readonly options: ChildPaperOptions;
}): Promise<GivenChild> {
  const { paper, choices, options } = given;
  const problems = options.problem.map(problemOf);
  const texts: EntryTexts = Object.fromEntries(
    CHILD_OPTIONS.flatMap(({ field }) => {
      const text = options[field];
      return text === undefined ? [] : [[field, text === true ? "yes" : text]];
    }),
  );
  const read = readMeasurements(texts);
  if (!read.ok) {
    const sentences = read.error.map((issue) => `${optionOf(issue.field)}: ${describeEntryIssue(issue)}`);
    throw new CommandFailure(EXIT.notServed, [...sentences, "Nothing was written."].join("\n"));
  }
  const { measurements, notices } = read.value;
  const withFormulary = { ...options, formulary: options.formulary ?? "draft" };
  const loaded = await loadPaper({ paper, choices: { ...choices, problems, texts }, options: withFormulary });
  const report = computeChild({
    measurements,
    formulary: loaded.formulary ?? draftFormulary,
    ...(loaded.site === undefined ? {} : { site: loaded.site }),
    versions: { software: SOFTWARE_VERSION },
  });
  if (!report.ok) {
    throw new CommandFailure(EXIT.notServed, `${describeBodyIssue(report.error)} Nothing was written.`);
  }
  const { messages, numbers } = loaded.context.messages.language;
  return {
    loaded,
    report: report.value,
    problems,
    measured: Object.entries(texts).map(
      ([field, text]) =>
        `${describeField(field as EntryField, messages)} ${asWritten(field as EntryField, text ?? "", numbers)}`,
    ),
    notes: notices.map((notice) => describeEntryNotice(notice, messages)),
  };
}

/** What was typed; a bare number as the language of the paper writes it, with the unit that its option is in. */
function asWritten(field: EntryField, text: string, style: NumberStyle): string {
  const unit = /(Cm|Mm|Kg)$/.exec(field)?.[1]?.toLowerCase();
  if (unit === undefined || !/^\d+(\.\d+)?$/.test(text)) return text;
  return `${formatNumber(Number(text), style)}\u00a0${unit}`;
}
