import { readSiteProfile } from "@steelyard/core/body";
import { err, ok, type Result } from "@steelyard/core/result";
import { describeSiteProfileIssue } from "@steelyard/core/wording";
import { validateFormulary } from "@steelyard/formulary";
import {
  readFormularyText,
  reviewFormulary,
  withoutSignOff,
  writeFormulary,
} from "@steelyard/formulary/ownership";
import type { DocumentFault, DocumentKind } from "../department/documents-wire.ts";

export interface DocumentToRead {
  readonly kind: DocumentKind;
  readonly content: string;
}

export interface ReadDocument {
  /** In its one form: unsigned, laid out as the command line writes it. What is signed is the hash of this text. */
  readonly content: string;
  /** What a reviewer should look at although it is no fault. */
  readonly remarks: readonly DocumentFault[];
}

/**
 * A formulary or a calibration in the form in which it is kept and signed, or everything that is wrong with it. A sign-off that came
 * with it is taken off: here it is signed anew.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readDocument } from "@steelyard/records/documents";
 *
 * const read = readDocument({ kind: "formulary", content: "{" });
 * assert.ok(!read.ok && read.error[0]?.place === "line 1");
 * ```
 */
export function readDocument({
  kind,
  content,
}: DocumentToRead): Result<ReadDocument, readonly DocumentFault[]> {
  const json = readFormularyText(content);
  if (!json.ok) return json;
  if (kind === "calibration") return readCalibration(json.value);
  const formulary = validateFormulary(json.value);
  if (!formulary.ok) return formulary;
  const unsigned = withoutSignOff(formulary.value);
  return ok({ content: writeFormulary(unsigned), remarks: reviewFormulary(unsigned) });
}

function readCalibration(value: unknown): Result<ReadDocument, readonly DocumentFault[]> {
  const profile = readSiteProfile(value);
  if (!profile.ok) {
    return err(describeSiteProfileIssue(profile.error).map((message) => ({ place: "calibration", message })));
  }
  return ok({ content: calibrationText(value as object, { signed: false }), remarks: [] });
}

export function calibrationText(value: object, { signed }: { readonly signed: boolean }): string {
  return `${JSON.stringify({ ...value, signed }, undefined, 2)}\n`;
}
