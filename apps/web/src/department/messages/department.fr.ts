import type { Words } from "../../messages/words.ts";
import { accountFr } from "./account.fr.ts";
import { auditFr } from "./audit.fr.ts";
import { chartFr } from "./chart.fr.ts";
import type { departmentEn } from "./department.en.ts";
import { documentsFr } from "./documents.fr.ts";
import { formularyFr } from "./formulary.fr.ts";
import { frameFr } from "./frame.fr.ts";
import { linkFr } from "./link.fr.ts";
import { peopleFr } from "./people.fr.ts";
import { registerFr } from "./register.fr.ts";

/** The page of the department in French: machine-translated and reviewed by nobody. */
export const departmentFr: Words<typeof departmentEn> = {
  ...frameFr,
  account: accountFr,
  register: registerFr,
  link: linkFr,
  chart: chartFr,
  documents: documentsFr,
  formulary: formularyFr,
  people: peopleFr,
  audit: auditFr,
};
