import * as v from "valibot";
import { instant, passwordText } from "./wire.ts";

/** Names a session and opens nothing. */
const sessionId: v.GenericSchema<string> = v.pipe(v.string(), v.regex(/^[0-9a-f]{32}$/, "must be an id"));

/** A session of the person who asks. */
export interface SessionEntry {
  readonly id: string;
  readonly startedAt: string;
  /** To the minute. */
  readonly usedAt: string;
  /** The one that asks. */
  readonly isThis: boolean;
}
export const sessionsAnswerSchema: v.GenericSchema<{ readonly sessions: readonly SessionEntry[] }> =
  v.strictObject({
    sessions: v.array(
      v.strictObject({ id: sessionId, startedAt: instant, usedAt: instant, isThis: v.boolean() }),
    ),
  });

export interface EndSessionsRequest {
  readonly password: string;
  /** Absent: all but the one that asks. */
  readonly id?: string | undefined;
}
export const endSessionsRequestSchema: v.GenericSchema<EndSessionsRequest> = v.strictObject({
  password: passwordText,
  id: v.optional(sessionId),
});
export const endedSessionsSchema: v.GenericSchema<{ readonly ended: number }> = v.strictObject({
  ended: v.pipe(v.number(), v.integer(), v.minValue(0)),
});
