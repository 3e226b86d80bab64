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
  const look = (): void => {
    // Old browsers have no such locks; they lose the word, not the cases.
    navigator.locks?.query().then(
      ({ held = [] }) => onOthers(held.filter(({ name }) => name?.startsWith(lockPrefix)).length > 1),
      () => undefined,
    );
  };
  channel.onmessage = ({ data }) => {
    if (data === "changed") onChanged();
    else look();
  };
  navigator.locks
    ?.request(`${lockPrefix}${crypto.randomUUID()}`, () => {
      channel.postMessage("hello");
      look();
      return new Promise(() => undefined);
    })
    .catch(() => undefined);
  addEventListener("pagehide", () => channel.postMessage("bye"));
  document.addEventListener("visibilitychange", look);
  return { changed: () => channel.postMessage("changed") };
}
