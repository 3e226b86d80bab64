import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { DatabaseSettings, Store, StoreOptions } from "@steelyard/records/store";
import { openStore } from "@steelyard/records/store";
import { afterAll, beforeAll } from "vitest";
import { startTemporaryPostgres, type TemporaryPostgres } from "../../../../scripts/temporary-postgres.ts";

/** Real engines, each with empty databases of its own for every call; nothing stands in for them. */
export interface TestEngine {
  readonly name: "sqlite" | "postgres";
  readonly newDatabase: () => DatabaseSettings;
}

let postgres: TemporaryPostgres | undefined;
let folder = "";
let count = 0;

const sqlite: TestEngine = {
  name: "sqlite",
  newDatabase: () => ({ type: "sqlite", file: join(folder, `${++count}.sqlite`) }),
};
const postgresEngine: TestEngine = {
  name: "postgres",
  newDatabase: () => ({
    type: "postgres",
    url: (postgres as TemporaryPostgres).createDatabase(`t${++count}`),
  }),
};

/** Starts the engines of one test file. PostgreSQL is left out, with a notice, where none is installed. */
export function useEngines(havePostgres: boolean): readonly TestEngine[] {
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "steelyard-records-"));
    if (havePostgres) postgres = await startTemporaryPostgres({ durable: false });
  }, 60_000);
  afterAll(async () => {
    await postgres?.stop();
    rmSync(folder, { recursive: true, force: true });
  });
  if (!havePostgres) process.stderr.write("SKIPPED on PostgreSQL: none is installed here.\n");
  return havePostgres ? [sqlite, postgresEngine] : [sqlite];
}

/** A clock that goes one second at each look, from 2026-11-25 04:00. */
function tickingClock(): () => string {
  let seconds = 0;
  return () => new Date(Date.UTC(2026, 10, 25, 4, 0, seconds++)).toISOString();
}

export function open(database: DatabaseSettings, rest: Partial<StoreOptions> = {}): Promise<Store> {
  return openStore({ database, clock: tickingClock(), newId: randomUUID, ...rest });
}
