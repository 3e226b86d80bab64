import { type CaseEvent, caseCode, eventFormat, readCaseEvent } from "@steelyard/records/case";
import { type CaseDesk, type DeskState, openingDesk } from "../../state/case-desk.ts";
import { eventVersions } from "../running-versions.ts";
import { type CaseStore, type EventRow, openCaseStore } from "./case-store.ts";
import { type Department, openDepartment } from "./department.ts";
import { type Lock, makeLock, openEvent, openLock, sealEvent } from "./seal.ts";
import { type Tabs, watchTabs } from "./watch-tabs.ts";

let desk: CaseDesk | undefined;
let exchange: Department | undefined;

/** The one desk of this tab, opened when it is first asked for. */
export function caseDesk(): CaseDesk {
  if (desk === undefined) {
    desk = openCaseDesk();
    exchange = openDepartment(desk);
  }
  return desk;
}

/** The one exchange of this tab with the server of its department. */
export function department(): Department {
  caseDesk();
  return exchange as Department;
}

function openCaseDesk(): CaseDesk {
  let state: DeskState = openingDesk;
  let store: CaseStore | undefined;
  let lock: Lock | undefined;
  let key: CryptoKey | undefined;
  let tabs: Tabs | undefined;
  /** Waiting for the disk, by id. */
  const unsaved = new Map<string, CaseEvent>();
  /** Readable in this tab: from the disk, and whatever was added here. */
  const events = new Map<string, CaseEvent>();
  const tellers = new Set<() => void>();
  let lastAt = 0;

  const set = (change: Partial<DeskState>): void => {
    state = { ...state, ...change, unsaved: unsaved.size, events: [...events.values()] };
    for (const tell of tellers) tell();
  };
  const lost = (): void => {
    store = undefined;
    set({ keeps: "memory", trouble: "refused" });
  };

  const load = async (): Promise<void> => {
    if (store === undefined) return;
    lock = await store.lock();
    if (lock === undefined) key = undefined;
    const rows = await store.rows();
    const read = await Promise.all(rows.map((row) => eventOf(row, key)));
    const found = read.filter((one): one is CaseEvent => typeof one === "object");
    const kept = [...unsaved.values()];
    // Behind a lock the events of this tab stay readable until it closes: they were on its screen.
    const own = lock !== undefined && key === undefined ? [...events.values()] : [];
    events.clear();
    for (const event of [...found, ...own, ...kept]) events.set(event.id, event);
    const unreadable = read.filter((one) => one === "unreadable").length;
    set({ lock: lock === undefined ? "none" : key === undefined ? "locked" : "open", unreadable });
  };

  const save = async (): Promise<void> => {
    const waiting = [...unsaved.values()];
    if (store === undefined || waiting.length === 0) return;
    try {
      for (let tries = 0; tries < 5; tries += 1) {
        const by = lock;
        const rows = await Promise.all(waiting.map((event) => rowOf(event, by)));
        if (await store.put(rows, by?.id)) {
          for (const { id } of waiting) unsaved.delete(id);
          set({ keeps: "device" });
          tabs?.changed();
          return;
        }
        lock = await store.lock();
      }
      set({ keeps: "memory", trouble: "refused" });
    } catch (cause) {
      const isFull = cause instanceof DOMException && cause.name === "QuotaExceededError";
      set({ keeps: "memory", trouble: isFull ? "full" : "refused" });
    }
  };

  const opened = openCaseStore(lost)
    .then(async (fresh) => {
      store = fresh;
      await load();
      set({ keeps: "device" });
      tabs = watchTabs({
        onChanged: () => void load().catch(lost),
        onOthers: (otherTabs) => set({ otherTabs }),
      });
    })
    .catch(lost);

  /** One after the other: two quick touches are two rows. */
  let queue: Promise<void> = opened;
  const next = (work: () => Promise<void>): Promise<void> => {
    queue = queue.then(work, work);
    return queue;
  };
  const keep = (fresh: readonly CaseEvent[]): Promise<void> => {
    for (const event of fresh) {
      if (events.has(event.id)) continue;
      events.set(event.id, event);
      unsaved.set(event.id, event);
    }
    set({});
    return next(save);
  };
  const rewrite = (fresh: { readonly lock: Lock; readonly key: CryptoKey } | undefined): Promise<void> =>
    next(async () => {
      if (store === undefined) return;
      for (let tries = 0; tries < 5; tries += 1) {
        await load();
        const rows = await store.rows();
        const changed = await Promise.all(rows.map((row) => resealed(row, key, fresh?.lock)));
        if (!(await store.replaceAll(changed, fresh?.lock))) continue;
        key = fresh?.key;
        await load();
        tabs?.changed();
        return;
      }
    });

  return {
    state: () => state,
    subscribe: (tell) => {
      tellers.add(tell);
      return () => tellers.delete(tell);
    },
    newCase: () => ({
      caseId: crypto.randomUUID(),
      code: caseCode(crypto.getRandomValues(new Uint8Array(6))),
    }),
    add: async (caseId, drafts) => {
      const fresh = drafts.map(({ at, ...draft }): CaseEvent => {
        const now = Date.now();
        // Two things of one moment keep their order; a clock that was set back is believed.
        lastAt = now <= lastAt && lastAt - now < 1000 ? lastAt + 1 : now;
        const event = {
          format: eventFormat,
          id: crypto.randomUUID(),
          caseId,
          at: at ?? new Date(lastAt).toISOString(),
          versions: eventVersions(),
          ...draft,
        };
        const read = readCaseEvent(event);
        // What could not be read back must not be written.
        if (!read.ok) throw new RangeError(`Cannot keep ${event.type} as ${JSON.stringify(read.error)}`);
        return read.value;
      });
      await keep(fresh);
      return fresh;
    },
    take: keep,
    purge: (caseId) =>
      next(async () => {
        await store?.purge(caseId);
        for (const { id } of [...events.values()].filter((event) => event.caseId === caseId)) {
          events.delete(id);
          unsaved.delete(id);
        }
        set({});
        tabs?.changed();
      }),
    retry: () =>
      next(async () => {
        if (store === undefined) {
          store = await openCaseStore(lost).catch(() => undefined);
          await load();
        }
        await save();
      }),
    setPasscode: async (passcode) => rewrite(await makeLock(passcode)),
    removePasscode: () => rewrite(undefined),
    unlock: async (passcode) => {
      const fresh = lock && (await openLock(lock, passcode));
      if (fresh === undefined) return false;
      key = fresh;
      await next(load);
      return true;
    },
    lockNow: () => {
      key = undefined;
      events.clear();
      for (const event of unsaved.values()) events.set(event.id, event);
      set({ lock: "locked" });
    },
  };
}

async function rowOf(event: CaseEvent, lock: Lock | undefined): Promise<EventRow> {
  const { id, caseId } = event;
  return lock === undefined ? { id, caseId, event } : { id, caseId, sealed: await sealEvent(lock, event) };
}

async function eventOf(
  { event, sealed }: EventRow,
  key: CryptoKey | undefined,
): Promise<CaseEvent | "sealed" | "unreadable"> {
  if (sealed !== undefined && key === undefined) return "sealed";
  const read = readCaseEvent(
    sealed === undefined || key === undefined ? event : await openEvent(key, sealed),
  );
  return read.ok ? read.value : "unreadable";
}

/** What cannot be read is left as it is, whatever the lock: it may be of a later version. */
async function resealed(
  row: EventRow,
  key: CryptoKey | undefined,
  lock: Lock | undefined,
): Promise<EventRow> {
  const event = await eventOf(row, key);
  return typeof event === "object" ? rowOf(event, lock) : row;
}
