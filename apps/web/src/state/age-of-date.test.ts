import { expect, test } from "vitest";
import { ageAt, monthsBetween } from "./age-of-date.ts";

test.each([
  ["2017-11-25", "2026-11-25", 108],
  ["2017-11-26", "2026-11-25", 107.99],
  ["2026-10-31", "2026-11-30", 0.99],
  ["2024-02-29", "2025-02-28", 11.99],
  ["2026-11-25", "2026-11-25", 0],
])("from %s to %s are %d months", (from, to, months) => {
  expect(monthsBetween({ from, to })).toBeCloseTo(months, 1);
});

test.each(["", "no day", "2026-11-26", "1990-01-01"])("%o is no date of birth", (birthDate) => {
  expect(ageAt({ birthDate, day: "2026-11-25" })).toBeUndefined();
});
