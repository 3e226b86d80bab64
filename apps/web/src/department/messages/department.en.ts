import { accountEn } from "./account.en.ts";
import { auditEn } from "./audit.en.ts";
import { chartEn } from "./chart.en.ts";
import { documentsEn } from "./documents.en.ts";
import { formularyEn } from "./formulary.en.ts";
import { frameEn } from "./frame.en.ts";
import { linkEn } from "./link.en.ts";
import { peopleEn } from "./people.en.ts";
import { registerEn } from "./register.en.ts";

/** Every word of the page of the department. */
export const departmentEn = {
  ...frameEn,
  account: accountEn,
  register: registerEn,
  link: linkEn,
  chart: chartEn,
  documents: documentsEn,
  formulary: formularyEn,
  people: peopleEn,
  audit: auditEn,
};
