import type { LanguageEffects } from "../../components/language/language-context.ts";
import { languageEffects } from "../../effects/language-effects.ts";

/** As on Bedside, with the words of the department beside those of the page. */
export const departmentLanguage: LanguageEffects = {
  ...languageEffects,
  load: async (tag) => {
    const page = await languageEffects.load(tag);
    if (page === undefined) return undefined;
    const { departmentFr } = await import("../messages/department.fr.ts");
    return { ...page, department: departmentFr };
  },
};
