import { describe, expect, it } from "vitest";
import { readPublicFunctions } from "./support/public-functions.ts";

const functions = readPublicFunctions();

describe("a public function", () => {
  it.each(functions)("$name says what it gives and shows it", ({ comment }) => {
    expect(comment).toMatch(/\/\*\*\s*\*?\s*\S/);
    expect(comment).toMatch(/^\s*\* ```ts\s*$/m);
  });

  it("is found at all", () => {
    expect(functions.map(({ name }) => name)).toContain("@steelyard/core/units centimetres");
  });
});
