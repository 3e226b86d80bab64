export { draftFormulary } from "./draft-formulary.ts";
export type { FormularyFault } from "./formulary-fault.ts";
export { validateFormulary } from "./validate-formulary.ts";
