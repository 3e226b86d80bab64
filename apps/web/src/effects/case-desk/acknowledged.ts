import { type DBSchema, type IDBPDatabase, openDB } from "idb";

interface Tables extends DBSchema {
  /** The link and the life of the server's store, by the id of an event. */
  events: { key: string; value: string };
}

let opened: Promise<IDBPDatabase<Tables>> | undefined;

function open(): Promise<IDBPDatabase<Tables>> {
  opened ??= openDB<Tables>("steelyard-sent", 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore("events");
    },
    blocking: (_now, _later, event) => (event.target as IDBDatabase).close(),
  });
  return opened;
}

const named = (link: string, epoch: string): string => `${link} ${epoch}`;

/**
 * Which events the server of this link has said to have, each under the epoch it said so in. What cannot be read is not remembered: it is
 * offered once more, and the server knows it.
 */
export async function acknowledgedOn(link: string, epoch: string): Promise<ReadonlyMap<string, string>> {
  try {
    const db = await open();
    const [keys, values] = await Promise.all([db.getAllKeys("events"), db.getAll("events")]);
    const own = keys.filter((_, i) => values[i] === named(link, epoch));
    return new Map(own.map((id) => [id, epoch]));
  } catch {
    return new Map();
  }
}

/** Only after the answer that says so, and only what the device still holds as it was sent. */
export async function rememberAcknowledged(
  link: string,
  epoch: string,
  ids: readonly string[],
): Promise<void> {
  try {
    const tx = (await open()).transaction("events", "readwrite");
    await Promise.all([...ids.map((id) => tx.store.put(named(link, epoch), id)), tx.done]);
  } catch {
    // Offered once more after the next start.
  }
}

/** What was purged may come back as another event under its id. */
export async function forgetAcknowledged(ids: readonly string[]): Promise<void> {
  try {
    const tx = (await open()).transaction("events", "readwrite");
    await Promise.all([...ids.map((id) => tx.store.delete(id)), tx.done]);
  } catch {
    // Nothing was remembered.
  }
}
