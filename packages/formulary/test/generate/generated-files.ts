import { draftFormulary } from "@steelyard/formulary";
import { listFormulary } from "@steelyard/formulary/ownership";
import { jsonSchemas } from "./json-schemas.ts";

const NOTE =
  "<!-- Written by `npm run generate -w packages/formulary` from the files of the draft: edit those. -->\n";

/** Every file that follows from the schema and the draft, by its path from the root, with its text. */
export const generatedFiles: Readonly<Record<string, string>> = {
  "docs/draft-formulary.md": NOTE + listFormulary(draftFormulary),
  ...Object.fromEntries(
    Object.entries(jsonSchemas).map(([name, text]) => [`packages/formulary/schemas/${name}`, text]),
  ),
};
