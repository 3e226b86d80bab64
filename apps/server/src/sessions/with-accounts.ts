import { createAccounts } from "@steelyard/records/accounts";
import type { RecordsService, RouteService } from "../routes/route.ts";

/** The ways in of people beside what a server is made with. */
export function withAccounts(records: RecordsService): RouteService {
  const { store, settings } = records;
  const limits = {
    idleMs: settings.sessions.idleMinutes * 60_000,
    absoluteMs: settings.sessions.absoluteHours * 3_600_000,
  };
  return { accounts: createAccounts({ store, site: settings.site, limits }), ...records };
}
