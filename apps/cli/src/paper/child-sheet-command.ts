import { computeChild } from "@steelyard/core/child";
import type { ProblemId } from "@steelyard/core/dosing";
import { type EntryField, type EntryTexts, readMeasurements } from "@steelyard/core/entry";
import {
  describeBodyIssue,
  describeEntryIssue,
  describeEntryNotice,
  describeField,
} from "@steelyard/core/wording";
import { draftFormulary } from "@steelyard/formulary";
import { drawChildSheet } from "@steelyard/paper";
import { Command, Option } from "commander";
import { CHILD_OPTIONS, optionOf } from "../child/child-options.ts";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { SOFTWARE_VERSION } from "../versions.ts";
import { loadPaper, type PaperOptions, sheetOf, withPaperOptions } from "./paper-options.ts";
import { problemOf, problemsHelp } from "./problem-option.ts";
import { formatOf, writePaper } from "./write-paper.ts";

type Given = { readonly [F in EntryField]?: string | true };

interface ChildSheetOptions extends PaperOptions {
  readonly problem: readonly string[];
}

/** `steelyard paper child --length-cm 136 --arm-mm 190 --problem anaphylaxis -o child.pdf`. */
export function createChildSheetCommand(): Command {
  const command = withPaperOptions(
    new Command("child").description("One child: weight, doses of the chosen problems, working on the back."),
    "a4, a3 or letter",
  ).requiredOption("--problem <id...>", problemsHelp());
  for (const { flag, argument, field, help } of CHILD_OPTIONS) {
    const option = new Option(argument === undefined ? flag : `${flag} ${argument}`, help);
    option.attributeName = () => field;
    command.addOption(option);
  }
  return command.action(printChildSheet);
}

async function printChildSheet(options: Given & ChildSheetOptions): Promise<void> {
  formatOf(options.output);
  const size = sheetOf(options.page);
  const problems: readonly ProblemId[] = options.problem.map(problemOf);
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
  const given = { ...options, formulary: options.formulary ?? "draft" };
  const loaded = await loadPaper({ paper: "child", choices: { size, problems, texts }, options: given });
  const { measurements, notices } = read.value;
  const report = computeChild({
    measurements,
    formulary: loaded.formulary ?? draftFormulary,
    ...(loaded.site === undefined ? {} : { site: loaded.site }),
    versions: { software: SOFTWARE_VERSION },
  });
  if (!report.ok) {
    throw new CommandFailure(EXIT.notServed, `${describeBodyIssue(report.error)} Nothing was written.`);
  }
  const measured = Object.entries(texts).map(
    ([field, text]) => `${describeField(field as EntryField)} ${withUnit(field as EntryField, text ?? "")}`,
  );
  const notes = notices.map((notice) => describeEntryNotice(notice));
  const drawing = drawChildSheet({
    ...loaded.context,
    size,
    report: report.value,
    measured,
    notes,
    problems,
  });
  await writePaper({ drawing, output: options.output, loaded });
}

/** A bare number with the unit that its option is in. */
function withUnit(field: EntryField, text: string): string {
  const unit = /(Cm|Mm|Kg)$/.exec(field)?.[1]?.toLowerCase();
  return unit === undefined || /[a-z]/i.test(text) ? text : `${text}\u00a0${unit}`;
}
