import { CommandFailure, EXIT } from "./exit-status.ts";

const REASON: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file or folder",
  EACCES: "permission was denied",
  EPERM: "permission was denied",
  EISDIR: "it is a folder",
  ENOTDIR: "a part of the path is not a folder",
  ENOSPC: "the disk is full",
  EDQUOT: "the disk quota is used up",
  EFBIG: "the file would be larger than allowed",
  EROFS: "the disk is read-only",
  EIO: "the disk failed",
};

/** A failure of the file system as a sentence: "Cannot read in.csv: there is no such file or folder." */
export function fileFailure(action: "read" | "write", path: string, error: unknown): CommandFailure {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  const reason = REASON[code] ?? (error instanceof Error ? error.message : String(error));
  return new CommandFailure(EXIT.notServed, `Cannot ${action} ${path}: ${reason}. No result was written.`);
}
