import { statfs } from "node:fs/promises";
import { dirname } from "node:path";
import type { Settings } from "@steelyard/records/settings";

/**
 * What is left for the server on the disk of its database, bytes. `undefined` where that is not known: a PostgreSQL of another
 * machine, a database in memory, a folder that cannot be looked at.
 */
export async function readFreeBytes({ database, disk }: Settings): Promise<number | undefined> {
  const folder = disk.folder ?? (database.type === "sqlite" ? folderOf(database.file) : undefined);
  if (folder === undefined) return undefined;
  try {
    const { bavail, bsize } = await statfs(folder);
    return bavail * bsize;
  } catch {
    return undefined;
  }
}

function folderOf(file: string): string | undefined {
  return file === ":memory:" ? undefined : dirname(file);
}
