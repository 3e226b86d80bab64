export { studyEn as study } from "./study.en.ts";
