import { defaultBodyModel, type StoredSiteProfile } from "@steelyard/core/body";
import type { Formulary } from "@steelyard/core/dosing";
import {
  createImprint,
  type Imprint,
  type ImprintIssue,
  type PageSize,
  pageSizeOf,
  type SheetContext,
} from "@steelyard/paper";
import type { Command } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { loadFormulary } from "../formulary/load-formulary.ts";
import { sha256 } from "../formulary/sha256.ts";
import { loadSite } from "../site/load-site.ts";
import { SITE_OPTION } from "../site/site-option.ts";
import { SOFTWARE_VERSION } from "../software-version.ts";
import { languageHelp, paperMessagesOf } from "./language-option.ts";
import { loadTypefaces } from "./load-typefaces.ts";

/** The options that every paper shares. */
export interface PaperOptions {
  readonly page: string;
  readonly site?: string;
  readonly formulary?: string;
  readonly language: string;
  readonly date?: string;
  readonly expires?: string;
  readonly output: string;
}

/** Adds the options that every paper shares. */
export function withPaperOptions(command: Command, pages: string): Command {
  return command
    .option("--page <page>", `the sheet: ${pages}`, "a4")
    .option(SITE_OPTION.flags, SITE_OPTION.help)
    .option("--formulary <file>", 'the site\'s formulary, or "draft"')
    .option("--language <tag>", languageHelp, "en")
    .option("--date <day>", "the day it is made, as 2026-11-25 (today when not given)")
    .option("--expires <day>", "the day after which it must not be used (a year later when not given)")
    .requiredOption("-o, --output <file>", "the file to write, .pdf or .svg");
}

/** What was asked for, loaded and checked: what every paper is drawn with, and the site's own files. */
export interface LoadedPaper {
  readonly context: SheetContext;
  readonly site?: StoredSiteProfile;
  readonly formulary?: Formulary;
  readonly madeOn: string;
}

/** Loads everything a paper rests on; nothing is drawn when any of it cannot be used. */
export async function loadPaper(given: {
  readonly paper: string;
  readonly choices: Readonly<Record<string, unknown>>;
  readonly options: PaperOptions;
}): Promise<LoadedPaper> {
  const { paper, choices, options } = given;
  const messages = paperMessagesOf(options.language);
  const madeOn = options.date === undefined ? today() : dayOf(options.date, "--date");
  const expiresOn = options.expires === undefined ? yearAfter(madeOn) : dayOf(options.expires, "--expires");
  if (expiresOn <= madeOn) {
    throw new CommandFailure(
      EXIT.wrongUsage,
      `--expires ${expiresOn} must be later than the day it is made, ${madeOn}.`,
    );
  }
  const site = options.site === undefined ? undefined : await loadSite(options.site);
  const formulary =
    options.formulary === undefined ? undefined : (await loadFormulary(options.formulary)).formulary;
  const imprint = await createImprint({
    paper,
    choices: { ...choices, language: messages.language.tag },
    softwareVersion: SOFTWARE_VERSION,
    modelVersion: defaultBodyModel().version,
    site,
    formulary,
    madeOn,
    expiresOn,
    sha256,
  });
  if (!imprint.ok) throw imprintFailure(imprint.error);
  const context: SheetContext & { imprint: Imprint } = {
    typefaces: await loadTypefaces(),
    messages,
    imprint: imprint.value,
  };
  return {
    context,
    madeOn,
    ...(site === undefined ? {} : { site }),
    ...(formulary === undefined ? {} : { formulary }),
  };
}

/** The sheet of a name; a sentence with the names there are for any other. */
export function sheetOf(name: string, more: readonly string[] = []): PageSize {
  const size = pageSizeOf(name);
  if (size.ok) return size.value;
  const known = [...size.error.known, ...more];
  throw new CommandFailure(
    EXIT.wrongUsage,
    `There is no page "${name}": use ${known.slice(0, -1).join(", ")} or ${known.at(-1)}. Nothing was written.`,
  );
}

function imprintFailure(issue: ImprintIssue): CommandFailure {
  const sentence =
    issue.type === "other-model"
      ? `The calibration was made for body model ${issue.profileModel}, and this is ${issue.currentModel}: calibrate again.`
      : `The formulary was changed after ${issue.name} signed it on ${issue.date}: have it reviewed and signed again.`;
  return new CommandFailure(EXIT.notServed, `${sentence} Nothing was written.`);
}

function today(): string {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** A year: sites review their papers yearly (common practice). */
function yearAfter(day: string): string {
  const [year = "", ...rest] = day.split("-");
  const later = `${Number(year) + 1}-${rest.join("-")}`;
  return later.replace(/-02-29$/, "-02-28");
}

function dayOf(text: string, option: string): string {
  const date = new Date(`${text}T12:00:00Z`);
  if (/^\d{4}-\d{2}-\d{2}$/.test(text) && date.toJSON()?.startsWith(text)) return text;
  throw new CommandFailure(EXIT.wrongUsage, `${option} "${text}" is not a day: give it as 2026-11-25.`);
}
