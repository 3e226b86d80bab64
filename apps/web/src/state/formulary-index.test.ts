import { draftFormulary } from "@steelyard/formulary";
import { expect, test } from "vitest";
import { formularyIndex } from "./formulary-index.ts";
import { indexFormulary } from "./index-formulary.ts";

test("names every use once, under its problem", () => {
  const indexed = formularyIndex.problems.flatMap(({ uses }) => uses.map(({ id }) => id));
  const uses = draftFormulary.medicines.flatMap(({ id, uses }) => uses.map((use) => `${id}.${use.id}`));
  expect(indexed.toSorted()).toEqual(uses.toSorted());
  expect(indexed.length).toBeGreaterThan(13);
});

test("keeps the order of the site, then that of the medicines, and no empty problem", () => {
  const [first] = draftFormulary.medicines;
  if (first === undefined) throw new Error("no medicine");
  const [use] = first.uses;
  if (use === undefined) throw new Error("no use");
  const medicine = (problem: "arrest" | "pain" | "shock") => ({ ...first, uses: [{ ...use, problem }] });
  const { problems } = indexFormulary({
    ...draftFormulary,
    medicines: [medicine("pain"), medicine("arrest"), medicine("shock")],
    problemOrder: ["infection", "shock"],
  });
  expect(problems.map(({ problem }) => problem)).toEqual(["shock", "pain", "arrest"]);
});

test("says the language of a formulary that is not the draft's", () => {
  expect(formularyIndex.language).toBeUndefined();
  expect(indexFormulary({ ...draftFormulary, language: "fr" }).language).toBe("fr");
});
