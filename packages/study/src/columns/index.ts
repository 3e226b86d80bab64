// What a page needs to talk about columns, without the readers of files.
export type { ColumnMapping, ColumnRole, MappingChange } from "../import/column-mapping.ts";
export { STUDY_FIELDS, type StudyField } from "../import/study-field.ts";
