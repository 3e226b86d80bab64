import type { StoreTrouble } from "../engine.ts";

/** Primary result codes of SQLite; the low byte of an extended one. */
const troubles: Readonly<Record<number, StoreTrouble>> = {
  5: "busy",
  6: "busy",
  8: "read-only",
  10: "disk-failed",
  11: "disk-failed",
  13: "disk-full",
  14: "unreachable",
  26: "disk-failed",
};

export function explainSqliteError(error: unknown): StoreTrouble | undefined {
  const code = (error as { readonly errcode?: unknown } | null)?.errcode;
  return typeof code === "number" ? troubles[code & 0xff] : undefined;
}
