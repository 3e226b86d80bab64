import type { Formulary, Medicine } from "@steelyard/core/dosing";
import { draftFormulary } from "../draft-formulary.ts";
import { canonicalJson } from "./canonical-json.ts";

/** Of the draft: one of these is high-alert in any formulary, so that a mark taken away does not take the second pair of eyes away. */
const markedInDraft: ReadonlySet<string> = new Set(
  draftFormulary.medicines.flatMap(({ id, highAlert }) => (highAlert ? [id] : [])),
);

export interface SignaturesNeeded {
  readonly signatures: 1 | 2;
  /** Names of the high-alert medicines for which one pair of eyes is not enough. */
  readonly because: readonly string[];
}

/**
 * How many licensed reviewers must sign a formulary before a site computes by it: two where it has a high-alert medicine (marked in it,
 * or in the draft that ships), or changes one of the formulary in force (leaving it out or taking its mark away is a change), otherwise one.
 *
 * ```ts
 * import { draftFormulary } from "@steelyard/formulary";
 * import { signaturesNeeded } from "@steelyard/formulary/ownership";
 * import assert from "node:assert/strict";
 * const plain = { ...draftFormulary, medicines: draftFormulary.medicines.filter(({ highAlert }) => !highAlert) };
 * assert.equal(signaturesNeeded({ formulary: draftFormulary }).signatures, 2);
 * assert.equal(signaturesNeeded({ formulary: plain }).signatures, 1);
 * assert.ok(signaturesNeeded({ formulary: plain, inForce: draftFormulary }).because.includes("heparin"));
 * ```
 *
 * @source ismp-high-alert
 */
export function signaturesNeeded({
  formulary,
  inForce,
}: {
  readonly formulary: Formulary;
  readonly inForce?: Formulary;
}): SignaturesNeeded {
  const own = new Map(formulary.medicines.map((medicine) => [medicine.id, medicine]));
  const changed = (inForce?.medicines ?? []).filter((medicine) => {
    const now = own.get(medicine.id);
    return medicine.highAlert && (now === undefined || canonicalJson(now) !== canonicalJson(medicine));
  });
  const marked = formulary.medicines.filter(({ id, highAlert }) => highAlert || markedInDraft.has(id));
  const because = [...new Map([...marked, ...changed].map(named)).values()];
  return { signatures: because.length > 0 ? 2 : 1, because };
}

function named({ id, name }: Medicine): readonly [string, string] {
  return [id, name];
}
