import {
  type CaseEvent,
  type CaseEventDraft,
  type EventVersions,
  eventFormat,
} from "@steelyard/records/case";

interface Given {
  readonly caseId: string;
  /** The name of the person, who stands on the event. */
  readonly by: string;
  readonly versions: EventVersions;
  readonly id: string;
  readonly at: string;
}

/** An event that somebody types in the department: of its own, with an id of its own, so that sending it twice is harmless. */
export function departmentEvent(draft: CaseEventDraft, { by, ...head }: Given): CaseEvent {
  return { ...draft, format: eventFormat, ...head, by: by.slice(0, longestBy) } as CaseEvent;
}

/** As much as an event holds of who it is by. */
const longestBy = 40;
