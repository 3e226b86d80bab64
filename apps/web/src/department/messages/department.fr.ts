import type { Words } from "../../messages/words.ts";
import { departmentEn } from "./department.en.ts";
export const departmentFr: Words<typeof departmentEn> = departmentEn;
