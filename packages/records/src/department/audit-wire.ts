import * as v from "valibot";
import { count, instant, limitInQuery, wholeInQuery } from "./wire.ts";

/** Entries in one answer. */
export const longestAuditList = 200;

export interface AuditQuery {
  /** Entries before this place. */
  readonly before?: number | undefined;
  readonly limit?: number | undefined;
  readonly action?: string | undefined;
  /** `person:<id>`, `device:<id>`, `command` or `server`. */
  readonly actor?: string | undefined;
}
export const auditQuerySchema: v.GenericSchema<unknown, AuditQuery> = v.strictObject({
  before: v.optional(wholeInQuery),
  limit: v.optional(limitInQuery(longestAuditList)),
  action: v.optional(v.pipe(v.string(), v.regex(/^[a-z.-]{1,60}$/, "must be an action such as cases.read"))),
  actor: v.optional(v.pipe(v.string(), v.regex(/^[a-z]+(:[0-9a-z-]{1,60})?$/, "must be an actor"))),
}) as unknown as v.GenericSchema<unknown, AuditQuery>;

export interface AuditEntry {
  readonly position: number;
  readonly at: string;
  readonly actor: string;
  /** Of the person or the device, as it is called now. */
  readonly actorName?: string | undefined;
  readonly action: string;
  readonly subject: string;
  readonly detail: Readonly<Record<string, string | number | boolean>>;
}
export interface AuditAnswer {
  /** The latest first. */
  readonly entries: readonly AuditEntry[];
  readonly next?: number | undefined;
}
export const auditAnswerSchema: v.GenericSchema<AuditAnswer> = v.strictObject({
  entries: v.array(
    v.strictObject({
      position: count,
      at: instant,
      actor: v.string(),
      actorName: v.optional(v.string()),
      action: v.string(),
      subject: v.string(),
      detail: v.record(v.string(), v.union([v.string(), v.number(), v.boolean()])),
    }),
  ),
  next: v.optional(count),
});

/** Of the log of the site of whoever asks. */
export interface AuditVerifyAnswer {
  readonly whole: boolean;
  readonly entries: number;
  /** Of the last entry. Kept elsewhere, it shows later that the log was not written anew. */
  readonly hash: string;
  readonly faults: readonly {
    readonly type:
      | "gap"
      | "broken-chain"
      | "changed-entry"
      | "wrong-end"
      | "changed-events"
      | "missing-events";
    readonly position?: number | undefined;
    readonly expected?: number | undefined;
    readonly found?: number | undefined;
    readonly missing?: number | undefined;
    readonly purged?: number | undefined;
  }[];
}
export const auditVerifyAnswerSchema: v.GenericSchema<AuditVerifyAnswer> = v.strictObject({
  whole: v.boolean(),
  entries: count,
  hash: v.string(),
  faults: v.array(
    v.strictObject({
      type: v.picklist([
        "gap",
        "broken-chain",
        "changed-entry",
        "wrong-end",
        "changed-events",
        "missing-events",
      ]),
      position: v.optional(count),
      expected: v.optional(count),
      found: v.optional(count),
      missing: v.optional(v.number()),
      purged: v.optional(count),
    }),
  ),
});
