import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { onTestFinished } from "vitest";

export const BIN = fileURLToPath(new URL("../bin/steelyard.js", import.meta.url));

export interface Run {
  readonly status: number | null;
  readonly stdout: string;
  /** Line breaks and runs of spaces made single spaces, so that wrapping does not matter. */
  readonly stderr: string;
}

/** Runs the real command, with this Node, and waits for it. */
export function runSteelyard(
  args: readonly string[],
  { input = "", cwd }: { input?: string | Buffer; cwd?: string } = {},
): Run {
  const { status, stdout, stderr } = spawnSync(process.execPath, [BIN, ...args], {
    input,
    encoding: "utf8",
    maxBuffer: 1e8,
    ...(cwd === undefined ? {} : { cwd }),
  });
  return { status, stdout, stderr: stderr.replaceAll(/\s+/g, " ").trim() };
}

export interface Folder {
  readonly path: string;
  write(name: string, content: string | Buffer): string;
  read(name: string): string;
  names(): readonly string[];
}

/** A folder of its own for one test, removed after it. */
export function temporaryFolder(): Folder {
  const path = mkdtempSync(join(tmpdir(), "steelyard-"));
  onTestFinished(() => rmSync(path, { recursive: true }));
  return {
    path,
    write(name, content) {
      writeFileSync(join(path, name), content);
      return join(path, name);
    },
    read: (name) => readFileSync(join(path, name), "utf8"),
    names: () => readdirSync(path).sort(),
  };
}
