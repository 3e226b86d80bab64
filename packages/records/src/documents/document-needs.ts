import type { Formulary } from "@steelyard/core/dosing";
import { type SignaturesNeeded, signaturesNeeded } from "@steelyard/formulary/ownership";
import type { DocumentToRead } from "./read-document.ts";

export type DocumentNeeds = SignaturesNeeded;

/**
 * How many licensed reviewers must sign a document before it is in force, by the document itself: one for a calibration; for a formulary
 * one, or two where it has a high-alert medicine or changes one of the formulary in force.
 *
 * Where one is needed, the reviewer who wrote it may be the one: a small hospital has one pharmacist, and whoever signs answers for it
 * either way. Where two are needed, whoever wrote it is neither of them.
 *
 * `content` of both as `readDocument` gives it.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { documentNeeds } from "@steelyard/records/documents";
 *
 * assert.equal(documentNeeds({ kind: "calibration", content: "{}" }).signatures, 1);
 * ```
 */
export function documentNeeds(
  { kind, content }: DocumentToRead,
  inForce?: { readonly content: string },
): DocumentNeeds {
  if (kind === "calibration") return { signatures: 1, because: [] };
  return signaturesNeeded({
    formulary: JSON.parse(content) as Formulary,
    ...(inForce === undefined ? {} : { inForce: JSON.parse(inForce.content) as Formulary }),
  });
}
