import { randomUUID } from "node:crypto";
import { readFileSync } from "node:fs";
import { readSettings, type Settings } from "@steelyard/records/settings";
import { openStore, type Store } from "@steelyard/records/store";
import type { Command } from "commander";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { fileFailure } from "../file-failure.ts";

export interface RecordsOptions {
  readonly settings?: string;
}

/** The option of every command that works on the records of a department. */
export function withSettings(command: Command): Command {
  return command.option(
    "--settings <file.json>",
    "the settings of the server; the environment stands in for any of them (docs/operations.md)",
  );
}

export interface Records {
  readonly store: Store;
  readonly settings: Settings;
}

/** Does `work` on the records that the settings name, and closes them again. */
export async function withRecords<T>(
  { settings: file }: RecordsOptions,
  work: (records: Records) => Promise<T>,
): Promise<T> {
  const settings = loadSettings(file);
  let store: Store;
  try {
    const clock = (): string => new Date().toISOString();
    store = await openStore({ database: settings.database, clock, newId: randomUUID });
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new CommandFailure(EXIT.notServed, `Cannot open the records: ${why}`);
  }
  try {
    return await work({ store, settings });
  } finally {
    await store.close();
  }
}

function loadSettings(file: string | undefined): Settings {
  let text = "";
  try {
    if (file !== undefined) text = readFileSync(file, "utf8");
  } catch (error) {
    throw fileFailure("read", file ?? "", error);
  }
  const read = readSettings({ text, env: process.env });
  if (read.ok) return read.value;
  const faults = read.error.map(({ where, reason }) => `Settings: ${where} ${reason}.`);
  throw new CommandFailure(EXIT.wrongUsage, faults.join("\n"));
}
