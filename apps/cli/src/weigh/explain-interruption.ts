import { CommandFailure, EXIT } from "../exit-status.ts";
import { fileFailure } from "../file-failure.ts";

/** An interruption, a full disk: what the file system or the person did, as a sentence. */
export function explainInterruption({
  error,
  name,
  signal,
}: {
  error: unknown;
  name: string;
  signal: AbortSignal;
}): unknown {
  // Whatever else breaks when the person has stopped it, breaks for that reason.
  if (signal.aborted) return new CommandFailure(EXIT.notServed, "Interrupted; no result was written.");
  if (error instanceof CommandFailure) return error;
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  return code === undefined ? error : fileFailure("write", name, error);
}
