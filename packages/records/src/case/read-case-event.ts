import { err, ok, type Result } from "@steelyard/core/result";
import * as v from "valibot";
import { type CaseEvent, type CaseEventType, eventFormat } from "./case-event.ts";
import { caseEventSchema } from "./case-event-schema.ts";

/** Why something is no event that can be read here. */
export type EventFault =
  | { readonly type: "not-an-object" }
  /** Of a later format, or of none. */
  | { readonly type: "unknown-format"; readonly format: unknown }
  /** A kind of event that this version does not know. */
  | { readonly type: "unknown-event"; readonly event: string }
  /** One part of it is not as it must be. */
  | { readonly type: "faulty-part"; readonly path: string; readonly reason: string };

const types: ReadonlySet<string> = new Set<CaseEventType>([
  "case-started",
  "measurement",
  "estimate",
  "dose-given",
  "later-weight",
  "note",
  "second-reading",
  "closed",
  "deleted",
  "undo",
]);

/**
 * A case event from anything that was stored, sent or imported, or every reason why it is none.
 *
 * The format is checked before the type and the type before its parts, so that an event of a later version is called
 * that and not corrupt. Nothing is corrected or left out: an event with a word too much is refused.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readCaseEvent } from "@steelyard/records/case";
 *
 * assert.deepEqual(readCaseEvent({ format: 2 }), { ok: false, error: [{ type: "unknown-format", format: 2 }] });
 * ```
 */
export function readCaseEvent(value: unknown): Result<CaseEvent, readonly EventFault[]> {
  if (typeof value !== "object" || value === null || Array.isArray(value))
    return err([{ type: "not-an-object" }]);
  const { format, type } = value as { readonly format?: unknown; readonly type?: unknown };
  if (format !== eventFormat) return err([{ type: "unknown-format", format }]);
  if (typeof type !== "string" || !types.has(type)) {
    return err([{ type: "unknown-event", event: typeof type === "string" ? type.slice(0, 60) : "" }]);
  }
  const read = v.safeParse(caseEventSchema, value);
  if (read.success) return ok(read.output);
  return err(
    read.issues.map((issue) => ({
      type: "faulty-part",
      path: v.getDotPath(issue) ?? "",
      reason: issue.message,
    })),
  );
}
