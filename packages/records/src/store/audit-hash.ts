import { createHash } from "node:crypto";
import { canonicalText } from "../case/canonical-text.ts";
import type { AuditEntryRow } from "./tables.ts";

/** Before the first entry. */
export const noHash: string = "0".repeat(64);

export function sha256(text: string): string {
  return createHash("sha256").update(text).digest("hex");
}

/** Of everything an entry says and of the hash before it: no entry can be changed, moved or taken out unseen. */
export function auditHash(entry: Omit<AuditEntryRow, "hash">): string {
  const { site, position, at, actor, action, subject, detail, previous_hash } = entry;
  return sha256(canonicalText([site, position, at, actor, action, subject, detail, previous_hash]));
}
