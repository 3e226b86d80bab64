import type { Settings } from "@steelyard/records/settings";
import type { Store } from "@steelyard/records/store";

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

interface RetentionOptions {
  readonly store: Store;
  readonly settings: Settings;
  readonly log: { readonly info: (what: object, text: string) => void; readonly error: typeof console.error };
}

/** Purges, once an hour, the cases that nothing reached for as long as the site keeps them; nothing where it keeps them for ever. */
export function keepRetention({ store, settings, log }: RetentionOptions): NodeJS.Timeout | undefined {
  const days = settings.retentionDays;
  if (days === undefined) return undefined;
  const purge = async () => {
    try {
      const done = await store.purgeCases({
        site: settings.site,
        actor: "server",
        untouchedSince: new Date(Date.parse(store.clock()) - days * DAY_MS).toISOString(),
        reason: `retention of ${days} days`,
      });
      if (done.cases > 0) log.info({ ...done, days }, "Purged by policy");
    } catch {
      log.error({ days }, "Could not purge by policy; trying again in an hour");
    }
  };
  void purge();
  return setInterval(() => void purge(), HOUR_MS).unref();
}
