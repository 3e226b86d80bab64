import { createWriteStream } from "node:fs";
import { realpath, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import type { Writable } from "node:stream";
import { CommandFailure, EXIT } from "../exit-status.ts";
import { fileFailure } from "../file-failure.ts";

/** Where the result goes. */
export interface CsvSink {
  readonly stream: Writable;
  readonly name: string;
  /** Puts the finished result in its place. */
  commit(): Promise<void>;
  /** Removes what was written. */
  discard(): Promise<void>;
}

const nothing = async (): Promise<void> => {};

/**
 * Opens the output. A file is written beside its place under another name and takes its place only when finished, so
 * that half a result is never mistaken for a whole one; standard output ("-") and devices are written directly.
 */
export async function openSink(path: string, inputPath: string): Promise<CsvSink> {
  if (path === "-")
    return { stream: process.stdout, name: "standard output", commit: nothing, discard: nothing };
  const place = await placeOf(path);
  if (inputPath !== "-" && (await isSameFile(place.path, inputPath))) {
    throw new CommandFailure(
      EXIT.wrongUsage,
      `Input and output are the same file, ${path}: give the output another name.`,
    );
  }
  if (place.kind === "folder")
    throw fileFailure("write", path, Object.assign(new Error(), { code: "EISDIR" }));
  if (place.kind === "device") {
    return { stream: createWriteStream(place.path), name: path, commit: nothing, discard: nothing };
  }
  const beside = join(dirname(place.path), `.${basename(place.path)}.${process.pid}.part`);
  // "wx": a file of that name is not ours. flush: on the disk before it takes its place.
  const stream = createWriteStream(beside, { flags: "wx", flush: true });
  return {
    stream,
    name: path,
    commit: () =>
      rename(beside, place.path).catch((error) => Promise.reject(fileFailure("write", path, error))),
    discard: () => rm(beside, { force: true }),
  };
}

interface Place {
  readonly path: string;
  readonly kind: "file" | "folder" | "device";
}

/** The file behind a path, through links, and what it is now. */
async function placeOf(path: string): Promise<Place> {
  try {
    const real = await realpath(path);
    const stats = await stat(real);
    return { path: real, kind: stats.isFile() ? "file" : stats.isDirectory() ? "folder" : "device" };
  } catch {
    return { path, kind: "file" };
  }
}

async function isSameFile(first: string, second: string): Promise<boolean> {
  try {
    const [a, b] = await Promise.all([stat(first), stat(second)]);
    return a.isFile() && a.dev === b.dev && a.ino === b.ino;
  } catch {
    return false;
  }
}
