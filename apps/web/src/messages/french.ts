import { FRENCH_LANGUAGE } from "@steelyard/core/wording";
import { casesFr } from "./cases.fr.ts";
import { fr } from "./fr.ts";
import { paperFr } from "./paper.fr.ts";
import { practiceFr } from "./practice.fr.ts";
import { readerFr } from "./reader.fr.ts";
import { sheetFr } from "./sheet.fr.ts";
import { siteFr } from "./site.fr.ts";
import { studyFr } from "./study.fr.ts";
import { techniqueFr } from "./technique.fr.ts";
import type { Translation } from "./translation.ts";

/** All of the page in French, loaded when somebody asks for it. Machine-translated and reviewed by nobody. */
export const french: Translation = {
  language: FRENCH_LANGUAGE,
  page: fr,
  cases: casesFr,
  paper: paperFr,
  practice: practiceFr,
  reader: readerFr,
  sheet: sheetFr,
  site: siteFr,
  study: studyFr,
  technique: techniqueFr,
};
