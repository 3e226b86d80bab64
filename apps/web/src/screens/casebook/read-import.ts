import {
  type CaseEvent,
  type EventFault,
  readCaseFile,
  readStudyRows,
  type StudyRowFault,
  studyEvents,
} from "@steelyard/records/case";
import { cases } from "../../messages/cases.ts";

export interface ImportRead {
  readonly events: readonly CaseEvent[];
  /** Every fault of the file as a sentence. */
  readonly faults: readonly string[];
}

interface Sources {
  /** When cases without a date are taken to have begun. */
  readonly at: string;
  readonly uuid: () => string;
}

/** Cases from a file of this program, JSON or CSV: which it is, its first sign says. */
export function readImport(text: string, { at, uuid }: Sources): ImportRead {
  return /^[\uFEFF\s]*[[{]/.test(text) || text.trim() === "" ? fromJson(text) : fromCsv(text, { at, uuid });
}

function fromJson(text: string): ImportRead {
  const words = cases.importFaults;
  const read = readCaseFile(text);
  if (read.ok) {
    const { events, refused } = read.value;
    const faults = refused.flatMap((one) =>
      one.faults.map((fault) => words.event(one.place, sayEvent(fault))),
    );
    return { events, faults };
  }
  const { error } = read;
  const fault = error.type === "not-json" ? words["not-json"](error.reason) : words[error.type];
  return { events: [], faults: [fault] };
}

function fromCsv(text: string, { at, uuid }: Sources): ImportRead {
  const { rows, faults } = readStudyRows(text);
  const events = rows.flatMap(({ study }) =>
    studyEvents(study, { at, caseId: uuid(), ids: Array.from({ length: 5 }, uuid) }),
  );
  return { events, faults: faults.map(sayRow) };
}

function sayEvent(fault: EventFault): string {
  const words = cases.importFaults;
  switch (fault.type) {
    case "not-an-object":
    case "unknown-format":
      return words[fault.type];
    case "unknown-event":
      return words["unknown-event"](fault.event);
    case "faulty-part":
      return words["faulty-part"](fault.path, fault.reason);
  }
}

function sayRow(fault: StudyRowFault): string {
  const words = cases.importFaults;
  switch (fault.type) {
    case "no-rows":
      return words["no-rows"];
    case "missing-column":
      return words["missing-column"](fault.column);
    case "unknown-column":
      return words["unknown-column"](fault.column);
    case "not-a-number":
      return words["not-a-number"](fault.row, fault.column, fault.text);
    case "unequal-fields":
      return words["unequal-fields"](fault.row, fault.fields, fault.expected);
    case "open-quote":
      return words["open-quote"](fault.row);
    case "faulty-value":
      return words["faulty-value"](fault.row, fault.column, fault.reason);
  }
}
