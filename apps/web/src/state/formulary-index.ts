import { draftFormulary } from "@steelyard/formulary";
import { type FormularyIndex, indexFormulary } from "./index-formulary.ts";

/**
 * Of the formulary that comes with the page. The build puts the value here in place of the computing, and so leaves the formulary itself
 * out of the first screen.
 */
export const formularyIndex: FormularyIndex = indexFormulary(draftFormulary);
