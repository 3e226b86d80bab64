import { readSiteProfile, type StoredSiteProfile } from "@steelyard/core/body";
import { err, ok, type Result } from "@steelyard/core/result";
import { describeSiteProfileIssue } from "@steelyard/core/wording";
import { language } from "../../messages/language.ts";
import { siteMessages } from "../../messages/site.ts";

/** The calibration in the text of a file, or why it cannot be used: all that is wrong with it. */
export function readSiteText(file: string, text: string): Result<StoredSiteProfile, readonly string[]> {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text.replace(/^\ufeff/, ""));
  } catch {
    return err([siteMessages.notJson(file)]);
  }
  const profile = readSiteProfile(parsed);
  return profile.ok ? ok(profile.value) : err(describeSiteProfileIssue(profile.error, language?.site));
}
