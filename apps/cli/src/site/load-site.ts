import { readSiteProfile, type StoredSiteProfile } from "@steelyard/core/body";
import { describeSiteProfileIssue } from "@steelyard/core/wording";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { readJsonFile } from "./read-json-file.ts";

/** The calibration in a file. One that is not whole, or of another body model, is refused: nothing is computed without it. */
export async function loadSite(path: string): Promise<StoredSiteProfile> {
  const profile = readSiteProfile(await readJsonFile(path));
  if (profile.ok) return profile.value;
  const { error } = profile;
  const sentences = describeSiteProfileIssue(error);
  throw new CommandFailure(
    EXIT.notServed,
    [
      `Cannot use ${path}: ${error.type === "faulty" ? "it was changed or damaged." : sentences.join(" ")}`,
      ...(error.type === "faulty" ? sentences : []),
      "Nothing was computed.",
    ].join("\n"),
  );
}
