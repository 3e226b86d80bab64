import type { StoreTrouble } from "../engine.ts";

/** SQLSTATE, or its class of two signs; see appendix A of the manual of PostgreSQL. */
const troubles: Readonly<Record<string, StoreTrouble>> = {
  "53100": "disk-full",
  "25006": "read-only",
  "58": "disk-failed",
  "53": "busy",
  "40": "busy",
  "55": "busy",
  "08": "unreachable",
  "57": "unreachable",
  "28": "unreachable",
  "3D": "unreachable",
};

export function explainPostgresError(error: unknown): StoreTrouble | undefined {
  const { code, message } = (error ?? {}) as { readonly code?: unknown; readonly message?: unknown };
  // Of the system first: EPIPE has five signs as an SQLSTATE has, which always holds a digit.
  if (typeof code === "string" && /^E[A-Z]+$/.test(code)) return "unreachable";
  if (typeof code === "string" && /^[0-9A-Z]{5}$/.test(code))
    return troubles[code] ?? troubles[code.slice(0, 2)];
  // What the driver itself says of a connection has no code.
  return typeof message === "string" && /connection|timeout|not queryable|client was closed/i.test(message)
    ? "unreachable"
    : undefined;
}
