import { readFileSync } from "node:fs";
import { draftFormulary } from "@steelyard/formulary";
import { describe, expect, it } from "vitest";
import { generatedFiles } from "./generated-files.ts";

const page = (path: string): string => readFileSync(new URL(`../../../../${path}`, import.meta.url), "utf8");

describe("the conflicts of the draft", () => {
  const conflicts = draftFormulary.medicines.flatMap(({ name, uses }) =>
    uses.filter(({ options }) => options.length > 1).map((use) => ({ name, use })),
  );
  const [, rest = ""] = page("docs/draft-formulary.md").split("\n## Where sources disagree\n");
  const lines = (rest.split("\n## ")[0] ?? "").split("\n").filter((line) => line.startsWith("* "));

  it("each have one line of the page: the default, the others, and why", () => {
    expect(conflicts.length).toBeGreaterThan(50);
    const missing = conflicts.filter(({ name, use }) => {
      const own = lines.filter((line) => line.startsWith(`* ${name}, ${use.title}: **`));
      const [chosen] = use.options.filter(({ id }) => id === use.defaultOption);
      const others = use.options.filter((option) => option !== chosen);
      return !own.some(
        (line) =>
          line.includes(`**${chosen?.title}** by default`) &&
          others.every(({ title }) => line.includes(title)) &&
          line.endsWith(` Why: ${use.defaultReason}`),
      );
    });
    expect(missing.map(({ name, use }) => `${name}, ${use.title}`)).toEqual([]);
    expect(lines.length).toBe(conflicts.length);
  });

  it("are counted in docs/formulary.md", () => {
    expect(page("docs/formulary.md").replaceAll(/\s+/g, " ")).toContain(
      `has all ${conflicts.length} of its uses with more than one dose`,
    );
  });
});

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
