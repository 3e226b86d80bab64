export { type StudyTable, selectRows, type WordColumn, wordAt } from "./study-table.ts";
