import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { gunzipSync } from "node:zlib";

/** Where the data of a command lie. */
export interface DataOptions {
  readonly nhanesFolder: string;
  /** Text of the tidy survey file. */
  readonly surveyCsv?: string;
}

class WrongUsage extends Error {}

/**
 * Runs a command that takes `--nhanes DIR` and `--surveys FILE`. Sets the exit status: 0 done, 1 the data cannot be used, 2 wrong
 * usage.
 */
export function runCommand(given: {
  usage: string;
  /** Whether it can do without the surveys. */
  surveys: "needed" | "optional";
  run: (options: DataOptions) => void;
}): void {
  const { usage, surveys, run } = given;
  try {
    const options = readOptions();
    if (options.help) {
      process.stdout.write(usage);
      return;
    }
    if (options.nhanes === undefined) throw new WrongUsage("--nhanes is missing");
    if (options.surveys === undefined && surveys === "needed") throw new WrongUsage("--surveys is missing");
    run({
      nhanesFolder: options.nhanes,
      ...(options.surveys === undefined ? {} : { surveyCsv: contents(options.surveys) }),
    });
  } catch (error) {
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
    if (error instanceof WrongUsage) process.stderr.write(`\n${usage}`);
    process.exitCode = error instanceof WrongUsage ? 2 : 1;
  }
}

function readOptions(): { readonly nhanes?: string; readonly surveys?: string; readonly help?: boolean } {
  try {
    const options = {
      nhanes: { type: "string" },
      surveys: { type: "string" },
      help: { type: "boolean" },
    } as const;
    return parseArgs({ options }).values;
  } catch (error) {
    throw new WrongUsage(error instanceof Error ? error.message : String(error));
  }
}

function contents(path: string): string {
  const bytes = readFileSync(path);
  return new TextDecoder().decode(path.endsWith(".gz") ? gunzipSync(bytes) : bytes);
}
