export { nextSyncStep, type SyncStep } from "./device/next-step.ts";
export { newSyncState, type SyncState } from "./device/sync-state.ts";
export {
  collected,
  pullAnswered,
  pushAnswered,
  recorded,
  resumeSync,
  type SyncFailure,
  syncFailed,
} from "./device/sync-transitions.ts";
export {
  type DocumentInForce,
  type DocumentsInForce,
  documentsInForceSchema,
  type HeldDocuments,
  heldDocumentsSchema,
} from "./wire/document-schema.ts";
export { longestPull, longestPush, syncProtocol } from "./wire/sync-protocol.ts";
export {
  type PullAnswer,
  type PullRequest,
  type PushAnswer,
  type PushRequest,
  pullAnswerSchema,
  pullQuerySchema,
  pushAnswerSchema,
  pushRequestSchema,
  type RefusalReason,
} from "./wire/sync-schema.ts";
