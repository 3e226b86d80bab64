const channelName = "steelyard-cases";
const lockPrefix = "steelyard-tab-";

export interface Tabs {
  /** Says to the other tabs that what the device keeps has changed. */
  readonly changed: () => void;
}

/**
 * Tells when another tab has changed what is kept, and whether there is one. A tab holds a named lock for as long as it
 * lives, so that one that has crashed does not count.
 */
export function watchTabs({
  onChanged,
  onOthers,
}: {
  readonly onChanged: () => void;
  readonly onOthers: (others: boolean) => void;
}): Tabs {
  const channel = new BroadcastChannel(channelName);
  const own = `${lockPrefix}${crypto.randomUUID()}`;
  const watched = new Set<string>();
  const look = (): void => {
    // Old browsers have no such locks; they lose the word, not the cases.
    navigator.locks?.query().then(
      ({ held = [] }) => {
        const names = held.flatMap(({ name }) => (name?.startsWith(lockPrefix) ? [name] : []));
        const others = names.filter((name) => name !== own);
        onOthers(others.length > 0);
        for (const name of others) watchEnd(name);
      },
      () => undefined,
    );
  };
  /** Waits in line for the lock of another tab: it is had when that tab is no more, however it ended. */
  const watchEnd = (name: string): void => {
    if (watched.has(name)) return;
    watched.add(name);
    navigator.locks
      .request(name, () => undefined)
      .catch(() => undefined)
      .finally(() => {
        watched.delete(name);
        look();
      });
  };
  channel.onmessage = ({ data }) => {
    if (data === "changed") onChanged();
    look();
  };
  navigator.locks
    ?.request(own, () => {
      channel.postMessage("hello");
      look();
      return new Promise(() => undefined);
    })
    .catch(() => undefined);
  document.addEventListener("visibilitychange", look);
  return { changed: () => channel.postMessage("changed") };
}
