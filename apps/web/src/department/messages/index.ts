import { whenSpoken } from "../../messages/language.ts";
import type { Words } from "../../messages/words.ts";
import { departmentEn } from "./department.en.ts";

/** The words of the department, in the language of the page. */
export let words: Words<typeof departmentEn> = departmentEn;

whenSpoken((translation) => {
  words = translation?.department ?? departmentEn;
});
