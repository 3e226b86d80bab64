import type { StoredSiteProfile } from "@steelyard/core/body";
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { Signer } from "../../state/site-rules.ts";

/** A formulary as the device keeps it. */
export interface KeptFormulary {
  /** JSON; found valid by the part of the page that `checkedBy` names. */
  readonly text: string;
  readonly version: string;
  readonly fingerprint: string;
  readonly from: "file" | "department";
  /** What the department calls it by. */
  readonly document?: string;
  readonly signers: readonly Signer[];
  readonly checkedBy: string;
}

/** What waits for the next child; `null` is none. */
export interface NextRules {
  readonly formulary?: KeptFormulary | null;
  readonly site?: StoredSiteProfile | null;
}

interface Tables extends DBSchema {
  rules: { key: "in-use" | "next"; value: KeptFormulary | NextRules };
}

/** The browser says that it is done when the disk is. */
const durable = { durability: "strict" } as const;

let opened: Promise<IDBPDatabase<Tables>> | undefined;

function open(): Promise<IDBPDatabase<Tables>> {
  opened ??= openDB<Tables>("steelyard-rules", 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore("rules");
    },
    blocking: (_now, _later, event) => (event.target as IDBDatabase).close(),
    terminated: () => {
      opened = undefined;
    },
  }).catch((cause: unknown) => {
    opened = undefined;
    throw cause;
  });
  return opened;
}

/** The formulary in use on this device, and what waits; rejects where the browser keeps nothing. */
export async function keptRules(): Promise<{
  readonly inUse: KeptFormulary | undefined;
  readonly next: NextRules;
}> {
  const tx = (await open()).transaction("rules");
  const [inUse, next] = await Promise.all([tx.store.get("in-use"), tx.store.get("next"), tx.done]);
  return { inUse: inUse as KeptFormulary | undefined, next: (next as NextRules | undefined) ?? {} };
}

/** Keeps what the next child is computed by beside what waits already. */
export async function keepNext(rules: NextRules): Promise<void> {
  const tx = (await open()).transaction("rules", "readwrite", durable);
  const next = (await tx.store.get("next")) as NextRules | undefined;
  await Promise.all([tx.store.put({ ...next, ...rules }, "next"), tx.done]);
}

/** The formulary in use was found good by another version of the page. */
export async function keepInUse(formulary: KeptFormulary): Promise<void> {
  await (await open()).put("rules", formulary, "in-use");
}

/**
 * A child is computed by what waited: it is in use on this device from here on. Nothing happens to what waits where that is another one by
 * now. Returns what was put in use; a calibration is kept elsewhere.
 */
export async function promote(used: {
  readonly fingerprint: string;
  readonly site: StoredSiteProfile | undefined;
}): Promise<NextRules> {
  const tx = (await open()).transaction("rules", "readwrite", durable);
  const { formulary, site } = ((await tx.store.get("next")) as NextRules | undefined) ?? {};
  const isFormulary = formulary !== undefined && (formulary?.fingerprint ?? "") === used.fingerprint;
  const isSite = site !== undefined && JSON.stringify(site) === JSON.stringify(used.site ?? null);
  const left: NextRules = {
    ...(formulary !== undefined && !isFormulary && { formulary }),
    ...(site !== undefined && !isSite && { site }),
  };
  if (isFormulary || isSite) {
    if (Object.keys(left).length === 0) await tx.store.delete("next");
    else await tx.store.put(left, "next");
  }
  if (isFormulary) {
    if (formulary === null) await tx.store.delete("in-use");
    else await tx.store.put(formulary, "in-use");
  }
  await tx.done;
  return { ...(isFormulary && { formulary }), ...(isSite && { site }) };
}
