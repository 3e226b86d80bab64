import * as v from "valibot";
import type { CaseEvent } from "../../case/case-event.ts";
import { caseEventSchema } from "../../case/case-event-schema.ts";
import { instant, uuid } from "../../case/primitives.ts";
import { longestPull, longestPush, syncProtocol } from "./sync-protocol.ts";

const counter = v.pipe(v.number(), v.integer("must be a whole number"), v.minValue(0, "must be at least 0"));
const protocol = v.literal(syncProtocol);
const short = v.pipe(v.string(), v.maxLength(200));

/** What a device sends. The events are read one by one, so that a bad one does not hold up the others. */
export interface PushRequest {
  readonly protocol: typeof syncProtocol;
  /** By the clock of the device. */
  readonly sentAt: string;
  readonly events: readonly unknown[];
}
export const pushRequestSchema: v.GenericSchema<PushRequest> = v.strictObject({
  protocol,
  sentAt: instant,
  events: v.pipe(v.array(v.unknown()), v.maxLength(longestPush, `must be at most ${longestPush} events`)),
}) as v.GenericSchema<PushRequest>;

const fault: v.GenericSchema<SentFault> = v.variant("type", [
  v.strictObject({ type: v.literal("not-an-object") }),
  v.strictObject({ type: v.literal("unknown-format"), format: v.string() }),
  v.strictObject({ type: v.literal("unknown-event"), event: short }),
  v.strictObject({ type: v.literal("faulty-part"), path: short, reason: short }),
]);
const refusal: v.GenericSchema<RefusalReason> = v.variant("type", [
  v.strictObject({ type: v.literal("faulty"), faults: v.array(fault) }),
  v.strictObject({ type: v.literal("id-taken") }),
  v.strictObject({ type: v.literal("case-purged") }),
]);
/** Why an event is not taken: it stays on the device, with this. */
export type RefusalReason =
  | { readonly type: "faulty"; readonly faults: readonly SentFault[] }
  /** Another event is on the server under this id. */
  | { readonly type: "id-taken" }
  /** The case was deleted by policy. */
  | { readonly type: "case-purged" };

/** A fault of `readCaseEvent`, short enough to send. */
export type SentFault =
  | { readonly type: "not-an-object" }
  | { readonly type: "unknown-format"; readonly format: string }
  | { readonly type: "unknown-event"; readonly event: string }
  | { readonly type: "faulty-part"; readonly path: string; readonly reason: string };

const answerHead = {
  protocol,
  /** Names the life of the store; another one after a restore. */
  epoch: uuid,
  serverAt: instant,
};

export interface PushAnswer {
  readonly protocol: typeof syncProtocol;
  readonly epoch: string;
  readonly serverAt: string;
  /** Clock of the device minus clock of the server. */
  readonly skewMs: number;
  /** Ids of events that are on the disk of the server, now or since earlier. */
  readonly acknowledged: readonly string[];
  /** `place` counts from 0 in the request. */
  readonly refused: readonly { readonly place: number; readonly reason: RefusalReason }[];
}
export const pushAnswerSchema: v.GenericSchema<PushAnswer> = v.strictObject({
  ...answerHead,
  skewMs: v.pipe(v.number(), v.integer()),
  acknowledged: v.array(uuid),
  refused: v.array(v.strictObject({ place: counter, reason: refusal })),
});

export interface PullRequest {
  readonly protocol: typeof syncProtocol;
  readonly since: number;
  readonly limit: number;
  /** The epoch that `since` belongs to; absent at first. */
  readonly epoch?: string;
}
/** From a query, so numbers come as text. */
const inQuery = v.pipe(v.string(), v.regex(/^\d{1,15}$/, "must be a whole number"), v.transform(Number));
export const pullQuerySchema: v.GenericSchema<unknown, PullRequest> = v.strictObject({
  protocol: v.pipe(inQuery, v.literal(syncProtocol)),
  since: inQuery,
  limit: v.pipe(inQuery, v.minValue(1), v.maxValue(longestPull)),
  epoch: v.optional(uuid),
}) as unknown as v.GenericSchema<unknown, PullRequest>;

export interface PullAnswer {
  readonly protocol: typeof syncProtocol;
  readonly epoch: string;
  readonly serverAt: string;
  readonly changes: readonly (
    | { readonly cursor: number; readonly event: CaseEvent }
    | { readonly cursor: number; readonly purgedCaseId: string }
  )[];
  readonly cursor: number;
  readonly more: boolean;
}
export const pullAnswerSchema: v.GenericSchema<PullAnswer> = v.strictObject({
  ...answerHead,
  changes: v.array(
    v.union([
      v.strictObject({ cursor: counter, event: caseEventSchema }),
      v.strictObject({ cursor: counter, purgedCaseId: uuid }),
    ]),
  ),
  cursor: counter,
  more: v.boolean(),
});
