import type { StoredSiteProfile } from "@steelyard/core/body";
import type { Formulary } from "@steelyard/core/dosing";
import type { BedsideState } from "../../state/bedside-state.ts";
import { formularyIndex } from "../../state/formulary-index.ts";
import { indexFormulary } from "../../state/index-formulary.ts";
import { type FormularyInUse, fingerprintOf, type SiteRules } from "../../state/site-rules.ts";
import { findSite, keepSite } from "../kept-site.ts";
import {
  type KeptFormulary,
  keepInUse,
  keepNext,
  keptRules,
  type NextRules,
  promote,
} from "./rules-store.ts";

/** Names this part of this version of the page: what another one found good is looked at again. */
const checkedBy = import.meta.url;
/** Where the version of the formulary in use is noted a second time, so that losing it is noticed. */
const noteKey = "steelyard.formulary";
const draft: FormularyInUse = { index: formularyIndex };

const tellers = new Set<(rules: SiteRules) => void>();
const channel = typeof BroadcastChannel === "undefined" ? undefined : new BroadcastChannel("steelyard-rules");

/** The formulary in use on this device, and what waits for the next child. Never fails: without a disk there is the draft. */
export async function findRules(): Promise<{ readonly formulary: FormularyInUse; readonly next: SiteRules }> {
  try {
    const { inUse, next } = await keptRules();
    const formulary = await opened(inUse);
    if (inUse && formulary.own && inUse.checkedBy !== checkedBy) await keepInUse({ ...inUse, checkedBy });
    return { formulary, next: await openedRules(next) };
  } catch {
    return { formulary: withoutKept(), next: {} };
  }
}

/**
 * Gives rules to every child from the next one on: kept first, then told to this tab and the others. False where the browser keeps nothing,
 * so that they end with the page.
 */
export async function offerRules(rules: {
  readonly formulary?: Omit<KeptFormulary, "checkedBy"> | null;
  readonly site?: StoredSiteProfile | null;
}): Promise<boolean> {
  const { formulary, ...others } = rules;
  const next: NextRules = {
    ...others,
    ...(formulary !== undefined && { formulary: formulary && { ...formulary, checkedBy } }),
  };
  const isKept = await keepNext(next).then(
    () => true,
    () => false,
  );
  const told = await openedRules(next);
  for (const tell of tellers) tell(told);
  channel?.postMessage("changed");
  return isKept;
}

/** Tells what came for the next child, from this tab or another one. */
export function watchRules(tell: (rules: SiteRules) => void): void {
  tellers.add(tell);
  if (channel === undefined) return;
  channel.onmessage = () => {
    void findRules().then(({ formulary, next }) => {
      for (const each of tellers) each({ formulary, site: { profile: findSite() }, ...next });
    });
  };
}

/** What this tab computes by now is what the device has in use, where it waited for that. */
export async function settleRules({
  formulary,
  site,
}: Pick<BedsideState, "formulary" | "site">): Promise<void> {
  if (formulary === undefined) return;
  try {
    const promoted = await promote({ fingerprint: fingerprintOf(formulary), site });
    if (promoted.site !== undefined) keepSite(promoted.site ?? undefined);
    if (promoted.formulary === null) localStorage.removeItem(noteKey);
    else if (promoted.formulary !== undefined) localStorage.setItem(noteKey, promoted.formulary.version);
  } catch {
    // Storage is refused; the rules hold as long as the page is open.
  }
}

/** A kept formulary as the page uses it. */
function used({ fingerprint, from, signers }: KeptFormulary, formulary: Formulary): FormularyInUse {
  return { index: indexFormulary(formulary), own: { formulary, fingerprint, from, signers } };
}

async function openedRules({ formulary, site }: NextRules): Promise<SiteRules> {
  return {
    ...(formulary === null && { formulary: draft }),
    ...(formulary && { formulary: await opened(formulary) }),
    ...(site !== undefined && { site: { profile: site ?? undefined } }),
  };
}

async function opened(kept: KeptFormulary | undefined): Promise<FormularyInUse> {
  if (kept === undefined) return withoutKept();
  const { version } = kept;
  let formulary: Formulary;
  try {
    formulary = JSON.parse(kept.text) as Formulary;
  } catch {
    return { ...draft, lost: { version, why: "unreadable" } };
  }
  if (kept.checkedBy !== checkedBy) {
    const { stillFits } = await import("./read-formulary.ts");
    if (!stillFits(formulary)) return { ...draft, lost: { version, why: "unfit" } };
  }
  return used(kept, formulary);
}

/** The draft; with a word where the device had another one in use. */
function withoutKept(): FormularyInUse {
  let version: string | null = null;
  try {
    version = localStorage.getItem(noteKey);
  } catch {
    // Storage is refused: nothing was kept either.
  }
  return version === null ? draft : { ...draft, lost: { version, why: "unreadable" } };
}
