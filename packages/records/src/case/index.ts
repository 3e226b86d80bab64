export { canonicalText } from "./canonical-text.ts";
export { caseCode } from "./case-code.ts";
export type {
  CaseDose,
  CaseEstimate,
  CaseEvent,
  CaseEventDraft,
  CaseEventOf,
  CaseEventType,
  CaseMeasurements,
  EventHead,
  EventVersions,
} from "./case-event.ts";
export { eventFormat } from "./case-event.ts";
export { type CaseFileIssue, type ReadCaseFile, readCaseFile, writeCaseFile } from "./case-file.ts";
export { caseText, describeEvent, sinceStart } from "./case-text.ts";
export { fhirBundle } from "./fhir-bundle.ts";
export { type CaseRecord, type CaseWarning, foldCase, foldCases } from "./fold-case.ts";
export type { CaseTextMessages } from "./messages/case-text-messages.ts";
export { ENGLISH_CASE_TEXT } from "./messages/english-case-text.ts";
export { FRENCH_CASE_TEXT } from "./messages/french-case-text.ts";
export { type EventFault, readCaseEvent } from "./read-case-event.ts";
export {
  type ReadStudyRows,
  readStudyRows,
  type StudyRow,
  type StudyRowFault,
  studyEvents,
} from "./read-study-rows.ts";
export { fewestResearchRows, writeResearchRows } from "./write-research-rows.ts";
export { studyColumns, writeStudyRows } from "./write-study-rows.ts";
