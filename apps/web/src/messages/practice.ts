export { practiceEn as practice } from "./practice.en.ts";
