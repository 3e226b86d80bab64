import type { Formulary, Reviewer } from "@steelyard/core/dosing";
import { type Sha256, signFormulary, writeFormulary } from "@steelyard/formulary/ownership";
import { calibrationText, type DocumentToRead } from "./read-document.ts";

/**
 * A document as it is handed out, with the word of who signed it: a formulary with the sign-off of the first reviewers (two at most)
 * and its fingerprint, which `steelyard formulary verify` accepts; a calibration that says that it is signed.
 *
 * Throws a `RangeError` where nobody signed.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { signedContent } from "@steelyard/records/documents";
 *
 * const reviewers = [{ name: "A. Example", role: "pharmacist", date: "2026-11-25" }];
 * const content = await signedContent({ kind: "calibration", content: '{"signed":false}', reviewers, sha256: () => "" });
 * assert.equal(content, '{\n  "signed": true\n}\n');
 * ```
 */
export async function signedContent({
  kind,
  content,
  reviewers: [first, second],
  sha256,
}: DocumentToRead & { readonly reviewers: readonly Reviewer[]; readonly sha256: Sha256 }): Promise<string> {
  if (first === undefined) throw new RangeError("Cannot hand out a document as nobody signed it");
  const value: unknown = JSON.parse(content);
  if (kind === "calibration") return calibrationText(value as object, { signed: true });
  const formulary = value as Formulary;
  return writeFormulary(await signFormulary({ formulary, ...first, ...(second && { second }), sha256 }));
}
