import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openStore } from "@steelyard/records/store";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { findPostgres } from "../../../scripts/find-postgres.ts";
import { startTemporaryPostgres, type TemporaryPostgres } from "../../../scripts/temporary-postgres.ts";
import report from "../chaos/report.json" with { type: "json" };
import { type KillReport, runKills } from "../chaos/run-kills.ts";

// The small, seeded part of `npm run chaos`; the whole of it kills 1,000 times and its report is kept.
const kept = { lost: 0, twice: 0, auditFaults: 0 };

describe("kills under write load", () => {
  it.each(Object.entries(report as Readonly<Record<string, KillReport>>))(
    "the last whole run on %s lost nothing in 1,000 kills",
    (_name, whole) => {
      expect(whole).toMatchObject({ ...kept, kills: 1_000 });
      expect(whole.stored).toBe(whole.acknowledged);
      expect(whole.acknowledged).toBeGreaterThan(10_000);
    },
  );

  it("the server on SQLite", { timeout: 60_000 }, async () => {
    const folder = mkdtempSync(join(tmpdir(), "steelyard-chaos-"));
    const database = { type: "sqlite", file: join(folder, "chaos.sqlite") } as const;
    const outcome = await runKills({ database, kills: 4, seed: 1 });
    rmSync(folder, { recursive: true });
    expect(outcome).toMatchObject({ ...kept, stored: outcome.acknowledged });
    expect(outcome.acknowledged).toBeGreaterThan(0);
  });

  const havePostgres = findPostgres() !== undefined;
  if (!havePostgres) process.stderr.write("SKIPPED on PostgreSQL: none is installed here.\n");
  describe.skipIf(!havePostgres)("PostgreSQL", () => {
    let postgres: TemporaryPostgres;
    beforeAll(async () => {
      postgres = (await startTemporaryPostgres({ durable: true })) as TemporaryPostgres;
    }, 60_000);
    afterAll(() => postgres?.stop());

    it("and the server on it", { timeout: 60_000 }, async () => {
      const database = { type: "postgres", url: postgres.createDatabase("chaos") } as const;
      const killDatabase = async () => {
        await postgres.kill();
        await postgres.start();
      };
      const outcome = await runKills({ database, kills: 3, seed: 2, killDatabase, databaseEvery: 2 });
      expect(outcome).toMatchObject({ ...kept, stored: outcome.acknowledged, databaseKills: 1 });
      expect(outcome.acknowledged).toBeGreaterThan(0);

      // A server that lives on while the database is away says so, and is whole when it comes back.
      const store = await openStore({ database, clock: () => new Date().toISOString(), newId: randomUUID });
      await postgres.kill();
      const trouble = (): Promise<unknown> =>
        store.probe().then(
          () => "none",
          (error: unknown) => store.engine.explainError(error),
        );
      // A backend lives on for a moment after its postmaster and still answers.
      await expect.poll(trouble, { timeout: 10_000 }).toBe("unreachable");
      await postgres.start();
      await store.probe();
      await store.close();
    });
  });
});
