import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { Lock, SealedEvent } from "./seal.ts";

/** One event on the device, in the clear or sealed; ids are random and say nothing. */
export interface EventRow {
  readonly id: string;
  readonly caseId: string;
  readonly event?: unknown;
  readonly sealed?: SealedEvent;
}

interface Tables extends DBSchema {
  events: { key: string; value: EventRow; indexes: { caseId: string } };
  settings: { key: string; value: Lock };
}

export interface CaseStore {
  readonly rows: () => Promise<readonly EventRow[]>;
  readonly lock: () => Promise<Lock | undefined>;
  /**
   * All rows or none, on the disk when it ends. False, and nothing written, where the lock is not `lockId` any more:
   * another tab has set or removed it.
   */
  readonly put: (rows: readonly EventRow[], lockId: string | undefined) => Promise<boolean>;
  /** Replaces every row and the lock together. False where somebody has added a row since. */
  readonly replaceAll: (rows: readonly EventRow[], lock: Lock | undefined) => Promise<boolean>;
  readonly purge: (caseId: string) => Promise<void>;
}

const lockKey = "lock";
/** The browser says that it is done when the disk is. */
const durable = { durability: "strict" } as const;

/** Opens the cases of this device; rejects where the browser keeps nothing. */
export async function openCaseStore(onLost: () => void): Promise<CaseStore> {
  const db: IDBPDatabase<Tables> = await openDB<Tables>("steelyard-cases", 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore("events", { keyPath: "id" }).createIndex("caseId", "caseId");
      fresh.createObjectStore("settings");
    },
    // A later version in another tab must not wait for this one.
    blocking: () => {
      db.close();
      onLost();
    },
    terminated: onLost,
  });
  return {
    rows: () => db.getAll("events"),
    lock: () => db.get("settings", lockKey),
    put: async (rows, lockId) => {
      const tx = db.transaction(["events", "settings"], "readwrite", durable);
      const lock = await tx.objectStore("settings").get(lockKey);
      if (lock?.id !== lockId) {
        await tx.done;
        return false;
      }
      await Promise.all([...rows.map((row) => tx.objectStore("events").put(row)), tx.done]);
      return true;
    },
    replaceAll: async (rows, lock) => {
      const tx = db.transaction(["events", "settings"], "readwrite", durable);
      if ((await tx.objectStore("events").count()) !== rows.length) {
        await tx.done;
        return false;
      }
      const settings = tx.objectStore("settings");
      await Promise.all([
        ...rows.map((row) => tx.objectStore("events").put(row)),
        lock === undefined ? settings.delete(lockKey) : settings.put(lock, lockKey),
        tx.done,
      ]);
      return true;
    },
    purge: async (caseId) => {
      const tx = db.transaction("events", "readwrite", durable);
      const keys = await tx.store.index("caseId").getAllKeys(caseId);
      await Promise.all([...keys.map((key) => tx.store.delete(key)), tx.done]);
    },
  };
}
