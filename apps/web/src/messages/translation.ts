import type { Language } from "@steelyard/core/wording";
import type { departmentEn } from "../department/messages/department.en.ts";
import type { casesEn } from "./cases.en.ts";
import type { en } from "./en.ts";
import type { paperEn } from "./paper.en.ts";
import type { practiceEn } from "./practice.en.ts";
import type { readerEn } from "./reader.en.ts";
import type { sheetEn } from "./sheet.en.ts";
import type { siteEn } from "./site.en.ts";
import type { studyEn } from "./study.en.ts";
import type { techniqueEn } from "./technique.en.ts";
import type { Words } from "./words.ts";

/**
 * Everything that a language other than English has to say on the page, by area. An area added here does not compile
 * before it has its words in `french.ts`.
 */
export interface Translation {
  /** The language's own part of the library: numbers, and the sentences about a child. */
  readonly language: Language;
  readonly page: Words<typeof en>;
  readonly cases: Words<typeof casesEn>;
  readonly paper: Words<typeof paperEn>;
  readonly practice: Words<typeof practiceEn>;
  readonly reader: Words<typeof readerEn>;
  readonly sheet: Words<typeof sheetEn>;
  readonly site: Words<typeof siteEn>;
  readonly study: Words<typeof studyEn>;
  readonly technique: Words<typeof techniqueEn>;
  /** On the page of the department only, which brings them itself. */
  readonly department?: Words<typeof departmentEn>;
}
