import { readSiteProfile, type StoredSiteProfile } from "@steelyard/core/body";
import type { Formulary } from "@steelyard/core/dosing";
import { err, ok, type Result } from "@steelyard/core/result";
import { describeSiteProfileIssue } from "@steelyard/core/wording";
import { validateFormulary } from "@steelyard/formulary";
import { readFormularyText } from "@steelyard/formulary/ownership";
import { language } from "../../messages/language.ts";
import { paperMessages } from "../../messages/paper.ts";
import type { Taken } from "./paper-choices.ts";

/** How many faults are shown: whoever mends a formulary has the command, which lists them all. */
const shown = 3;

/** A calibration from its file, or why it cannot be used. */
export function readSiteFile(
  file: string,
  text: string,
): Result<Taken<StoredSiteProfile>, readonly string[]> {
  const parsed = parse(text);
  if (parsed === undefined) return err([paperMessages.notJson(file)]);
  const profile = readSiteProfile(parsed);
  return profile.ok
    ? ok({ file, value: profile.value })
    : err(describeSiteProfileIssue(profile.error, language?.site).slice(0, shown));
}

/** A formulary from its file, whole and without a fault, or its first faults. */
export function readFormularyFile(file: string, text: string): Result<Taken<Formulary>, readonly string[]> {
  if (parse(text) === undefined) return err([paperMessages.notJson(file)]);
  const read = readFormularyText(text);
  const checked = read.ok ? validateFormulary(read.value) : read;
  if (checked.ok) return ok({ file, value: checked.value });
  const faults = checked.error.map(({ place, message }) => `${place}: ${message}`);
  return err([paperMessages.faults(file, faults.length), ...faults.slice(0, shown)]);
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\ufeff/, ""));
  } catch {
    return undefined;
  }
}
