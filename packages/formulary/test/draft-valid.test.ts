import { draftFormulary, validateFormulary } from "@steelyard/formulary";
import { expect, it } from "vitest";

// On its own, so that a fault planted in the draft can be seen caught without the slower tests.
it("the draft has no fault", () => {
  expect(validateFormulary(draftFormulary)).toEqual({ ok: true, value: draftFormulary });
});
