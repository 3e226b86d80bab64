import type { Formulary, OverlayRecord } from "@steelyard/core/dosing";
import { err, type Result } from "@steelyard/core/result";
import * as v from "valibot";
import { describeSchemaIssue } from "../describe-schema-issue.ts";
import type { FormularyFault } from "../formulary-fault.ts";
import { validateFormulary } from "../validate-formulary.ts";
import { canonicalJson } from "./canonical-json.ts";
import { citedSourceIds } from "./cited-source-ids.ts";
import { type PathIssue, valueAt, withMemberAt, withoutValueAt, withValueAt } from "./formulary-path.ts";
import { type Overlay, type OverlayChange, overlaySchema } from "./overlay.ts";
import { withoutSignOff } from "./sign-off.ts";

/**
 * The formulary with a site's changes, or every change that does not fit it, each with its place.
 *
 * A change fits where what it found is still there, to the letter; one that does not refuses the whole overlay, and so
 * does a result that is not a valid formulary. What was changed, where and why stays in `overlays` of the result, which
 * is unsigned until it is signed as a whole. Sources that nothing cites any more are left out.
 *
 * ```ts
 * import { draftFormulary } from "@steelyard/formulary";
 * import { applyOverlay } from "@steelyard/formulary/ownership";
 * import assert from "node:assert/strict";
 * const result = applyOverlay(draftFormulary, {
 *   id: "north-site",
 *   version: "1",
 *   title: "Defibrillators of the north site",
 *   base: { id: draftFormulary.id, version: draftFormulary.version },
 *   changes: [
 *     {
 *       change: "set",
 *       at: "deviceEnergiesJ",
 *       from: draftFormulary.deviceEnergiesJ,
 *       to: [5, 10, 20, 50, 100, 150, 200],
 *       reason: "what the devices can be set to",
 *     },
 *   ],
 * });
 * assert.ok(result.ok && result.value.deviceEnergiesJ.length === 7);
 * ```
 */
export function applyOverlay(
  base: Formulary,
  overlay: unknown,
): Result<Formulary, readonly FormularyFault[]> {
  const parsed = v.safeParse(overlaySchema, overlay);
  if (!parsed.success) return err(parsed.issues.map(describeSchemaIssue));
  const { changes, ...head } = parsed.output;
  const misfit = baseFaults(base, parsed.output);
  if (misfit.length > 0) return err(misfit);

  let current: unknown = withoutSignOff(base);
  const faults: FormularyFault[] = [];
  changes.forEach((change, index) => {
    const applied = applyChange(current, change);
    if (applied.ok) current = applied.value;
    else faults.push({ place: `change ${index + 1}, ${change.at}`, message: applied.error });
  });
  if (faults.length > 0) return err(faults);

  const record: OverlayRecord = {
    id: head.id,
    version: head.version,
    title: head.title,
    baseVersion: base.version,
    changes: changes.map(({ change, at, reason }) => ({ change, at, reason })),
  };
  const changed = current as Formulary;
  const cited = citedSourceIds(changed.medicines);
  return validateFormulary({
    ...changed,
    version: `${base.version} + ${head.id} ${head.version}`,
    overlays: [...(base.overlays ?? []), record],
    sources: changed.sources?.filter?.(({ id }) => cited.has(id)),
  });
}

function baseFaults(base: Formulary, overlay: Overlay): FormularyFault[] {
  if (overlay.base.id !== base.id) {
    return [{ place: "base", message: `is made for ${overlay.base.id}, but this is ${base.id}` }];
  }
  if (base.overlays?.some(({ id }) => id === overlay.id)) {
    return [{ place: "base", message: `has had ${overlay.id} applied already` }];
  }
  return [];
}

/** The changed value, or what is wrong, in words. */
function applyChange(root: unknown, change: OverlayChange): Result<unknown, string> {
  const { at } = change;
  if (FIXED.has(at.split("/")[0] ?? "")) return err("is not for a site to change");
  if (change.change === "add") return inWords(withMemberAt(root, at, change.value));
  const present = valueAt(root, at);
  if (change.from === undefined) {
    if (present.ok) return err(`expected nothing there, but the base has ${shown(present.value)}`);
  } else if (!present.ok) {
    return err(`is no longer there; it was ${shown(change.from)}`);
  } else if (canonicalJson(present.value) !== canonicalJson(change.from)) {
    return err(
      `was ${shown(change.from)} when the change was made; the base now has ${shown(present.value)}`,
    );
  }
  return inWords(change.change === "set" ? withValueAt(root, at, change.to) : withoutValueAt(root, at));
}

/** What tells one formulary from another, and who signed it. */
const FIXED: ReadonlySet<string> = new Set(["id", "version", "signed", "signOff", "overlays"]);

function inWords(result: Result<unknown, PathIssue>): Result<unknown, string> {
  if (result.ok) return result;
  const { at, reason } = result.error;
  const words: Readonly<Record<PathIssue["reason"], string>> = {
    "not-there": `the base has no ${at}`,
    "not-a-list": `${at} is no list that something could be added to`,
    "already-there": `the base has ${at} already`,
  };
  return err(words[reason]);
}

/** Short enough for a message. */
function shown(value: unknown): string {
  const written = value === undefined ? "nothing" : canonicalJson(value);
  return written.length <= 80 ? written : `${written.slice(0, 77)}...`;
}
