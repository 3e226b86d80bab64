import { CommanderError } from "commander";
import { createProgram } from "./create-program.ts";
import { CommandFailure, EXIT } from "./exit-status.ts";
import { fileFailure } from "./file-failure.ts";
import { wrap } from "./wrap.ts";

process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  // Ended by a failure that is reported where it arose.
  if (error.syscall === undefined) return;
  // A reader such as `head` that has seen enough is no failure.
  if (error.code === "EPIPE") process.exit(EXIT.done);
  process.exit(report(fileFailure("write", "standard output", error)));
});

try {
  await createProgram().parseAsync(process.argv);
} catch (error) {
  process.exitCode = report(error);
}

/** Says what went wrong, unless it has been said, and gives the exit status. */
function report(error: unknown): number {
  if (error instanceof CommanderError) {
    // Help and version that were asked for come this way too.
    return error.exitCode === 0 ? EXIT.done : EXIT.wrongUsage;
  }
  if (error instanceof CommandFailure) {
    const lines = `steelyard: ${error.message}`.split("\n");
    process.stderr.write(`${lines.map((line) => wrap(line, { hanging: "  " })).join("\n")}\n`);
    return error.status;
  }
  throw error;
}
