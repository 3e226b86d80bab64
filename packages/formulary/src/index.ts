export { draftFormulary } from "./draft-formulary.ts";
