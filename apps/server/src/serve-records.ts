import { randomUUID } from "node:crypto";
import { readFileSync, statfsSync } from "node:fs";
import type { Server } from "node:tls";
import { readSettings, type Settings } from "@steelyard/records/settings";
import { openStore, type Store } from "@steelyard/records/store";
import { createServer } from "./create-server.ts";
import { keepRetention } from "./keep-retention.ts";
import { listenUntilStopped } from "./listen-until-stopped.ts";
import { createMetrics } from "./metrics.ts";
import { withAccounts } from "./sessions/with-accounts.ts";
import { type Certificate, readCertificate, renewCertificate } from "./tls.ts";

export interface ServeRecordsOptions {
  readonly pageDir: string;
  readonly port?: string;
  readonly settingsFile?: string;
  readonly env: Readonly<Record<string, string | undefined>>;
}

/** How long the database may take to let go of its connections. */
const LET_GO_WITHIN_MS = 5_000;

/** Serves the page and the records until it is told to stop; gives the exit status. */
export async function serveRecords({
  pageDir,
  port,
  settingsFile,
  env,
}: ServeRecordsOptions): Promise<number> {
  let text = "";
  let https: Certificate | undefined;
  let settings: Settings;
  try {
    text = settingsFile === undefined ? "" : readFileSync(settingsFile, "utf8");
    const read = readSettings({ text, env: port === undefined ? env : { ...env, STEELYARD_PORT: port } });
    if (!read.ok) {
      for (const { where, reason } of read.error) process.stderr.write(`Settings: ${where} ${reason}.\n`);
      return 2;
    }
    settings = read.value;
    if (settings.tls !== undefined) https = readCertificate(settings.tls);
    if (settings.disk.folder !== undefined) statfsSync(settings.disk.folder);
  } catch (error) {
    process.stderr.write(`Settings: ${error instanceof Error ? error.message : String(error)}\n`);
    return 1;
  }

  let store: Store;
  try {
    store = await openStore({
      database: settings.database,
      clock: () => new Date().toISOString(),
      newId: randomUUID,
    });
    await store.addSite(settings.site);
  } catch (error) {
    process.stderr.write(
      `Cannot open the records: ${error instanceof Error ? error.message : String(error)}\n`,
    );
    return 1;
  }
  let stopping = false;
  const records = withAccounts({ store, settings, metrics: createMetrics(), isStopping: () => stopping });
  const server = await createServer({
    pageDir,
    records,
    logger: { level: settings.log },
    ...(https === undefined ? {} : { https }),
  });
  const { tls } = settings;
  const renew = () => tls && renewCertificate(server.server as unknown as Server, tls, server.log);
  if (tls !== undefined) process.on("SIGHUP", renew);
  const retention = keepRetention({ store, settings, log: server.log });
  const devices = (await store.listDevices(settings.site)).filter(({ revokedAt }) => revokedAt === undefined);
  const code = await records.accounts.newSetUpCode();
  const hint = [
    devices.length > 0 ? "" : "\nNo device may send cases yet. Enrol one: steelyard device add --name NAME",
    code === undefined
      ? ""
      : `\nNobody can sign in yet. Open /department and make the first administrator with this code, within a day: ${code}`,
  ].join("");
  const status = await listenUntilStopped(server, {
    ...settings.listen,
    describe: (address) =>
      `Steelyard records: ${address} (site ${settings.site}, ${store.engine.name}, ${devices.length} devices)${hint}`,
    onStopping: () => {
      stopping = true;
    },
  });
  process.off("SIGHUP", renew);
  clearInterval(retention);
  // A database that does not answer must not keep the server from ending.
  const tooLong = setTimeout(() => process.exit(1), LET_GO_WITHIN_MS);
  await store.close();
  clearTimeout(tooLong);
  return status;
}
