import { randomUUID } from "node:crypto";
import { readFileSync } from "node:fs";
import { readSettings, type Settings } from "@steelyard/records/settings";
import { openStore, type Store } from "@steelyard/records/store";
import { createServer } from "./create-server.ts";
import { keepRetention } from "./keep-retention.ts";
import { listenUntilStopped } from "./listen-until-stopped.ts";
import { createMetrics } from "./metrics.ts";

export interface ServeRecordsOptions {
  readonly pageDir: string;
  readonly port?: string;
  readonly settingsFile?: string;
  readonly env: Readonly<Record<string, string | undefined>>;
}

/** Serves the page and the records until it is told to stop; gives the exit status. */
export async function serveRecords({
  pageDir,
  port,
  settingsFile,
  env,
}: ServeRecordsOptions): Promise<number> {
  let text = "";
  let https: { cert: string; key: string } | undefined;
  let settings: Settings;
  try {
    text = settingsFile === undefined ? "" : readFileSync(settingsFile, "utf8");
    const read = readSettings({ text, env: port === undefined ? env : { ...env, STEELYARD_PORT: port } });
    if (!read.ok) {
      for (const { where, reason } of read.error) process.stderr.write(`Settings: ${where} ${reason}.\n`);
      return 2;
    }
    settings = read.value;
    if (settings.tls !== undefined) {
      https = {
        cert: readFileSync(settings.tls.certificateFile, "utf8"),
        key: readFileSync(settings.tls.keyFile, "utf8"),
      };
    }
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
  const server = await createServer({
    pageDir,
    records: { store, settings, metrics: createMetrics(), isStopping: () => stopping },
    logger: { level: settings.log },
    ...(https === undefined ? {} : { https }),
  });
  const retention = keepRetention({ store, settings, log: server.log });
  const devices = (await store.listDevices(settings.site)).filter(({ revokedAt }) => revokedAt === undefined);
  const hint =
    devices.length > 0 ? "" : "\nNo device may send cases yet. Enrol one: steelyard device add --name NAME";
  const status = await listenUntilStopped(server, {
    ...settings.listen,
    describe: (address) =>
      `Steelyard records: ${address} (site ${settings.site}, ${store.engine.name}, ${devices.length} devices)${hint}`,
    onStopping: () => {
      stopping = true;
    },
  });
  clearInterval(retention);
  await store.close();
  return status;
}
