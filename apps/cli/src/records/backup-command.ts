import { once } from "node:events";
import { createReadStream, createWriteStream, existsSync, renameSync, rmSync } from "node:fs";
import { createInterface } from "node:readline";
import { finished } from "node:stream/promises";
import { backupStore, type RestoreIssue, restoreStore } from "@steelyard/records/store";
import type { Command } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { fileFailure } from "../file-failure.ts";
import { EXIT_STATUS_HELP } from "../help-text.ts";
import { type RecordsOptions, withRecords, withSettings } from "./open-records.ts";

/** `steelyard backup -o records.jsonl`. */
export function defineBackupCommand(command: Command): void {
  withSettings(command)
    .requiredOption("-o, --output <file>", "the file to write; it is there whole or not at all")
    .addHelpText(
      "after",
      `\nThe server goes on meanwhile. One line a row, of every table, with a checksum at the end; the same file\nrestores to SQLite and to PostgreSQL. It holds cases: keep it as safe as them.\n\n${EXIT_STATUS_HELP}`,
    )
    .action(backup);
}

/** `steelyard restore records.jsonl`. */
export function defineRestoreCommand(command: Command): void {
  withSettings(command)
    .argument("<file>", "a file that `steelyard backup` wrote")
    .addHelpText(
      "after",
      `\nInto an empty database, whole or not at all. Devices learn of it and send again what the backup lacks.\n\n${EXIT_STATUS_HELP}`,
    )
    .action(restore);
}

async function backup({ output, ...options }: RecordsOptions & { readonly output: string }): Promise<void> {
  if (existsSync(output)) {
    throw new CommandFailure(
      EXIT.notServed,
      `${output} is there already: name another file. Nothing was written.`,
    );
  }
  const part = `${output}.part`;
  await withRecords(options, async ({ store }) => {
    const file = createWriteStream(part, { mode: 0o600 });
    try {
      await once(file, "open");
      const rows = await backupStore(store, async (line) => {
        if (!file.write(`${line}\n`)) await once(file, "drain");
      });
      file.end();
      await finished(file);
      renameSync(part, output);
      process.stderr.write(`Wrote ${rows} rows to ${output}.\n`);
    } catch (error) {
      file.destroy();
      rmSync(part, { force: true });
      throw fileFailure("write", output, error);
    }
  });
}

async function restore(path: string, options: RecordsOptions): Promise<void> {
  await withRecords(options, async ({ store }) => {
    const file = createReadStream(path, "utf8");
    try {
      await once(file, "open");
    } catch (error) {
      throw fileFailure("read", path, error);
    }
    const restored = await restoreStore(
      store,
      createInterface({ input: file, crlfDelay: Number.POSITIVE_INFINITY }),
    );
    if (!restored.ok) {
      throw new CommandFailure(EXIT.notServed, `${sentenceOf(path, restored.error)} Nothing was restored.`);
    }
    const { faults } = await store.verifyAudit();
    const said =
      faults.length === 0 ? "its audit log holds" : "its audit log does not hold: run steelyard audit verify";
    process.stderr.write(`Restored ${restored.value} rows of ${path}; ${said}.\n`);
  });
}

function sentenceOf(path: string, issue: RestoreIssue): string {
  switch (issue.type) {
    case "no-backup":
      return `${path} is no backup that this version knows.`;
    case "other-tables":
      return `${path} has the tables of ${issue.found}, and this version those of ${issue.expected}: restore it with the version that made it, then upgrade.`;
    case "damaged":
      return `${path} is damaged or cut off at line ${issue.line}.`;
    case "not-empty":
      return "There are records in the database already: a backup is restored into an empty one.";
  }
}
