import { EXIT } from "./exit-status.ts";
import { fileFailure } from "./file-failure.ts";
import { report, runProgram } from "./run-program.ts";

process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  // Ended by a failure that is reported where it arose.
  if (error.syscall === undefined) return;
  // A reader such as `head` that has seen enough is no failure.
  if (error.code === "EPIPE") process.exit(EXIT.done);
  process.exit(report(fileFailure("write", "standard output", error)));
});

process.exitCode = await runProgram(process.argv.slice(2));
