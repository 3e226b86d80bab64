import { readFileSync } from "node:fs";
import { draftFormulary } from "@steelyard/formulary";
import { describe, expect, it } from "vitest";
import { generatedFiles } from "./generated-files.ts";

describe("the files that follow from the schema and the draft", () => {
  it.each(Object.keys(generatedFiles))(
    "%s is up to date (npm run generate -w packages/formulary)",
    (path) => {
      const written = readFileSync(new URL(`../../../../${path}`, import.meta.url), "utf8");
      const wanted = generatedFiles[path] ?? "";
      // Schemas are laid out by the formatter of the repository, so their data are compared.
      if (path.endsWith(".json")) expect(JSON.parse(written)).toEqual(JSON.parse(wanted));
      else expect(written === wanted).toBe(true);
    },
  );

  it("list every medicine, use, dose and source of the draft", () => {
    const listing = generatedFiles["docs/draft-formulary.md"] ?? "";
    for (const { id, uses } of draftFormulary.medicines) {
      expect(listing).toContain(`* Id \`${id}\``);
      for (const use of uses) {
        expect(listing).toContain(use.indication);
        for (const option of use.options) expect(listing).toContain(`Dose \`${option.id}\``);
      }
    }
    for (const { id } of draftFormulary.sources) expect(listing).toContain(`* \`${id}\`: `);
    expect(listing).toContain("Unsigned draft.");
    expect(listing).not.toMatch(/undefined|NaN|\[object/);
  });
});
