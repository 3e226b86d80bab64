import { err, ok, type Result } from "@steelyard/core/result";
import type { CaseEvent } from "./case-event.ts";
import { orderEvents } from "./order-events.ts";
import { type EventFault, readCaseEvent } from "./read-case-event.ts";

/** What a file of cases says of itself. */
const caseFileFormat = "steelyard-cases";
const caseFileVersion = 1;

export interface ReadCaseFile {
  readonly events: readonly CaseEvent[];
  /** Events that could not be read, by their place in the file from 1; the others are whole without them. */
  readonly refused: readonly { readonly place: number; readonly faults: readonly EventFault[] }[];
}

export type CaseFileIssue =
  | { readonly type: "empty" }
  /** `reason` is the JSON reader's, in English. */
  | { readonly type: "not-json"; readonly reason: string }
  | { readonly type: "not-a-case-file" }
  | { readonly type: "later-version"; readonly version: unknown };

/**
 * Cases as a JSON text that `readCaseFile` brings back whole: every event with all that was taken back.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readCaseFile, writeCaseFile } from "@steelyard/records/case";
 *
 * assert.deepEqual(readCaseFile(writeCaseFile([])), { ok: true, value: { events: [], refused: [] } });
 * ```
 */
export function writeCaseFile(events: readonly CaseEvent[]): string {
  const file = { format: caseFileFormat, version: caseFileVersion, events: orderEvents(events).events };
  return `${JSON.stringify(file, undefined, 1)}\n`;
}

/**
 * The events of a case file, each checked by itself: a bad one is told with its place and never stops the others.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readCaseFile } from "@steelyard/records/case";
 *
 * assert.deepEqual(readCaseFile("[1]"), { ok: false, error: { type: "not-a-case-file" } });
 * ```
 */
export function readCaseFile(text: string): Result<ReadCaseFile, CaseFileIssue> {
  const bare = text.replace(/^\uFEFF/, "");
  if (bare.trim() === "") return err({ type: "empty" });
  let file: unknown;
  try {
    file = JSON.parse(bare);
  } catch (cause) {
    return err({ type: "not-json", reason: cause instanceof Error ? cause.message : String(cause) });
  }
  if (typeof file !== "object" || file === null) return err({ type: "not-a-case-file" });
  const { format, version, events } = file as Readonly<Record<string, unknown>>;
  if (format !== caseFileFormat || !Array.isArray(events)) return err({ type: "not-a-case-file" });
  if (version !== caseFileVersion) return err({ type: "later-version", version });
  const read = events.map((event, i) => ({ place: i + 1, result: readCaseEvent(event) }));
  return ok({
    events: read.flatMap(({ result }) => (result.ok ? [result.value] : [])),
    refused: read.flatMap(({ place, result }) => (result.ok ? [] : [{ place, faults: result.error }])),
  });
}
