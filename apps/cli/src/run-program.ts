import { CommanderError } from "commander";
import { createProgram } from "./create-program.ts";
import { CommandFailure, EXIT } from "./exit-status.ts";
import { VersionsAsked } from "./versions-asked.ts";
import { wrap } from "./wrap.ts";

/** Runs the command with these arguments, says what went wrong, and gives the exit status. */
export async function runProgram(args: readonly string[]): Promise<number> {
  try {
    await createProgram().parseAsync(args, { from: "user" });
    return EXIT.done;
  } catch (error) {
    if (!(error instanceof VersionsAsked)) return report(error);
    const { describeVersions } = await import("./describe-versions.ts");
    process.stdout.write(`${describeVersions()}\n`);
    return EXIT.done;
  }
}

/** Says what went wrong, unless it has been said, and gives the exit status. */
export function report(error: unknown): number {
  if (error instanceof CommanderError) {
    // Help that was asked for comes this way too.
    return error.exitCode === 0 ? EXIT.done : EXIT.wrongUsage;
  }
  if (error instanceof CommandFailure) {
    const lines = `steelyard: ${error.message}`.split("\n");
    process.stderr.write(`${lines.map((line) => wrap(line, { hanging: "  " })).join("\n")}\n`);
    return error.status;
  }
  throw error;
}
