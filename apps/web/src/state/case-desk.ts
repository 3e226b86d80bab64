import type { CaseEvent, CaseEventDraft } from "@steelyard/records/case";

/** Where cases are kept, and who can read them. */
export interface DeskState {
  /** `memory`: the device keeps nothing, and the reason is `trouble`. */
  readonly keeps: "opening" | "device" | "memory";
  readonly trouble?: "refused" | "full";
  /** Events that are on the screen and not yet on the device. */
  readonly unsaved: number;
  /** `locked`: new events are kept, sealed; the earlier ones can only be read with the passcode. */
  readonly lock: "none" | "locked" | "open";
  /** What can be read. */
  readonly events: readonly CaseEvent[];
  /** Rows on the device that could not be read: damaged, or of a later version. */
  readonly unreadable: number;
  /** Steelyard is open in another tab of this browser as well. */
  readonly otherTabs: boolean;
}

export const openingDesk: DeskState = {
  keeps: "opening",
  unsaved: 0,
  lock: "none",
  events: [],
  unreadable: 0,
  otherTabs: false,
};

/** The place that events go through: makes ids and times, keeps the events, tells what changed. */
export interface CaseDesk {
  readonly state: () => DeskState;
  readonly subscribe: (tell: () => void) => () => void;
  /** Ends when the events are on the device, or when it is clear that they will not be; says which in `state`. */
  readonly add: (caseId: string, drafts: readonly CaseEventDraft[]) => Promise<readonly CaseEvent[]>;
  readonly newCase: () => { readonly caseId: string; readonly code: string };
  /** Events from a file; those that are known already change nothing. */
  readonly take: (events: readonly CaseEvent[]) => Promise<void>;
  /** Takes a case off the device for good. */
  readonly purge: (caseId: string) => Promise<void>;
  readonly retry: () => Promise<void>;
  readonly setPasscode: (passcode: string) => Promise<void>;
  /** False for a wrong passcode. */
  readonly unlock: (passcode: string) => Promise<boolean>;
  readonly lockNow: () => void;
  /** Unseals everything; only while open. */
  readonly removePasscode: () => Promise<void>;
}
