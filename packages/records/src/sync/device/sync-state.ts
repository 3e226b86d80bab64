import type { CaseEvent } from "../../case/case-event.ts";
import type { RefusalReason } from "../wire/sync-schema.ts";

/** What a device remembers of its exchange with the server. Plain data, to be kept beside the events. */
export interface SyncState {
  /** The life of the server's store that `cursor` counts in; absent before the first answer. */
  readonly epoch?: string;
  readonly cursor: number;
  /** Not acknowledged yet, in the order in which they were made. */
  readonly waiting: readonly CaseEvent[];
  /** Not taken by the server: they stay here, for somebody to read why. */
  readonly refused: readonly { readonly event: CaseEvent; readonly reason: RefusalReason }[];
  /** Every event of the device has to be offered: at first, and when the server's store was restored. */
  readonly mustCollect: boolean;
  /** There may be something to pull. */
  readonly mustPull: boolean;
  /** In a row; the wait grows with them. */
  readonly failures: number;
  readonly notBeforeMs: number;
  /** Nothing is sent until a person acts. */
  readonly halted?: "not-enrolled" | "update-needed";
  /** Clock of the device minus clock of the server, at the last answer. */
  readonly skewMs?: number;
}

/** Of a device that has never reached a server. */
export const newSyncState: SyncState = {
  cursor: 0,
  waiting: [],
  refused: [],
  mustCollect: true,
  mustPull: true,
  failures: 0,
  notBeforeMs: 0,
};
