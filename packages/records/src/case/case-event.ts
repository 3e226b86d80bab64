import type { MeasurementName } from "@steelyard/core/body";
import type { Dose } from "@steelyard/core/units";

/** Format of an event; a reader that knows only an older one refuses the event instead of misreading it. */
export const eventFormat = 1;

/** What ran on the device when the event was made. */
export interface EventVersions {
  readonly software: string;
  readonly model: string;
  readonly formulary: string;
  readonly formularySigned: boolean;
  /** The site's calibration as `name, day`; absent where none was used. */
  readonly calibration?: string;
}

/** What every event has. */
export interface EventHead {
  readonly format: typeof eventFormat;
  /** UUID made by the device: a resend is harmless. */
  readonly id: string;
  /** UUID of the case. */
  readonly caseId: string;
  /** By the clock of the device, UTC with milliseconds. */
  readonly at: string;
  /** Initials or a role, where somebody wants it said. */
  readonly by?: string;
  /** Id of the event this one stands in place of: a correction. */
  readonly replaces?: string;
  readonly versions: EventVersions;
}

/** Everything that was known of the child at one time, in the words of `Measurements`; the whole set every time. */
export type CaseMeasurements = Readonly<
  Partial<
    Record<NumberName, number> & {
      readonly sex: "m" | "f";
      readonly posture: "lying" | "half-sitting" | "seated";
      readonly build: "very-thin" | "thin" | "average" | "heavy" | "very-heavy";
      readonly missingLimb: "hand" | "forearm" | "arm" | "foot" | "lower-leg" | "leg";
      readonly oedema: boolean;
      readonly pregnant: boolean;
      readonly earlier: { readonly kg: number; readonly ageMonths: number };
    }
  >
>;
/** Measurements that are one number. */
export type NumberName = Exclude<
  MeasurementName,
  "sex" | "posture" | "build" | "missingLimb" | "oedema" | "pregnant" | "earlier"
>;

export interface CaseEstimate {
  readonly totalKg: number;
  readonly low95Kg: number;
  readonly high95Kg: number;
  readonly idealKg?: number;
  readonly rests: readonly string[];
}

export interface CaseDose {
  /** Line of the sheet: `adrenaline.arrest`. */
  readonly lineId: string;
  readonly medicine: string;
  readonly use: string;
  readonly route: string;
  readonly dose: Dose;
  readonly volume?: { readonly ml: number; readonly strength: string };
}

interface CaseEventBodies {
  /** `code` is what people call the case by: no name, no hospital number. */
  readonly "case-started": { readonly code: string };
  readonly measurement: { readonly measurements: CaseMeasurements };
  readonly estimate: { readonly estimate: CaseEstimate };
  readonly "dose-given": { readonly given: CaseDose };
  /** Read from a scale later, on the day `on` in the place's calendar. */
  readonly "later-weight": { readonly kg: number; readonly on: string };
  readonly note: { readonly text: string };
  /** What another person read without seeing the first values. */
  readonly "second-reading": { readonly lengthCm?: number; readonly armMm?: number };
  /** The clock is stopped. */
  readonly closed: Readonly<Record<never, never>>;
  /** Taken out of the lists; the events stay until they are purged by policy. */
  readonly deleted: Readonly<Record<never, never>>;
  /** `target` does not count any more; of an undo: what that took back counts again. */
  readonly undo: { readonly target: string };
}

export type CaseEventType = keyof CaseEventBodies;
export type CaseEventOf<T extends CaseEventType> = EventHead & { readonly type: T } & CaseEventBodies[T];

/** One thing that happened in one case. Events are added, never changed. */
export type CaseEvent = { [T in CaseEventType]: CaseEventOf<T> }[CaseEventType];

/** What a screen may say beside the body of an event. */
interface DraftHead<T> {
  readonly type: T;
  /** When it happened, where that is not now. */
  readonly at?: string;
  readonly by?: string;
  readonly replaces?: string;
}

/** An event before it has its head: what a screen has to say. */
export type CaseEventDraft = { [T in CaseEventType]: DraftHead<T> & CaseEventBodies[T] }[CaseEventType];
