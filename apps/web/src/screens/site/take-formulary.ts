import { err, ok, type Result } from "@steelyard/core/result";
import { sha256 } from "../../effects/sha256.ts";
import { readFormulary } from "../../effects/site-rules/read-formulary.ts";
import { offerRules } from "../../effects/site-rules/site-rules.ts";
import { siteMessages } from "../../messages/site.ts";
import { describeFormularyRefusal } from "./describe-formulary-refusal.ts";

/** Takes the formulary in a file for the children from now on, or says why not; nothing is changed then. */
export async function takeFormulary(
  file: string,
  text: string,
): Promise<Result<{ readonly version: string; readonly isKept: boolean }, readonly string[]>> {
  const read = await readFormulary(text, sha256);
  if (!read.ok) {
    return err([siteMessages.formulary.refused(file), ...describeFormularyRefusal(read.error)]);
  }
  const { formulary, fingerprint, signers } = read.value;
  const { version } = formulary;
  const kept = { text: JSON.stringify(formulary), version, fingerprint, from: "file", signers } as const;
  return ok({ version, isKept: await offerRules({ formulary: kept }) });
}
