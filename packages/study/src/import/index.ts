export type { ColumnMapping, ColumnRole, MappingChange, MappingDoubt } from "./column-mapping.ts";
export type { TextEncoding } from "./file-kind.ts";
export type { ImportIssue } from "./import-issue.ts";
export { type ImportedStudy, type ImportOptions, importStudy } from "./import-study.ts";
export { type FileFacts, type OpenedFile, openStudyFile } from "./open-study-file.ts";
export { STUDY_FIELDS, type StudyField } from "./study-field.ts";
export { type CellProblem, FATES, type Fate, type StudyFlow } from "./study-flow.ts";
