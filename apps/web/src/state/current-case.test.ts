import { expect, test } from "vitest";
import { emptyBedside } from "./bedside-state.ts";
import { followChild } from "./current-case.ts";
import { update } from "./update.ts";

const typed = update(emptyBedside, { type: "typed", field: "lengthCm", text: "107" });

test("a new child leaves the case, and the one brought back finds it again", () => {
  const current = { caseId: "a" };
  expect(followChild(current, typed)).toBe(current);
  const next = update(typed, { type: "next-child" });
  const left = followChild(current, next);
  expect(left).toMatchObject({ caseId: "a", leftWith: expect.stringContaining("107") });
  expect(followChild(left, next)).toBe(left);
  expect(followChild(left, update(next, { type: "brought-back" }))).toEqual(current);
  expect(followChild(left, update(next, { type: "typed", field: "lengthCm", text: "92" }))).toBe(left);
});

test("another child with the same numbers is another child", () => {
  const left = followChild({ caseId: "a" }, update(typed, { type: "next-child" }));
  const same = update(update(typed, { type: "next-child" }), {
    type: "typed",
    field: "lengthCm",
    text: "107",
  });
  expect(followChild(left, same)).toBe(left);
});

test("fields cleared by hand keep the case: the clock of an arrest must not vanish", () => {
  const current = { caseId: "a" };
  expect(followChild(current, update(typed, { type: "typed", field: "lengthCm", text: "" }))).toBe(current);
  expect(followChild(undefined, typed)).toBeUndefined();
});
