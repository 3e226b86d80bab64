import { readEntry } from "@steelyard/core/entry";
import { expect, test } from "vitest";
import { padKeys } from "./pad-keys.ts";

const keysOf = (kind: Parameters<typeof padKeys>[0], mark = ".") => {
  const { rows, beside } = padKeys(kind, mark);
  return [...rows, ...beside].flatMap((key) => key ?? []);
};

test("every pad has the ten digits, the mark of the language, and what its field takes", () => {
  const typed = (...of: Parameters<typeof keysOf>) => keysOf(...of).map(({ key }) => key);
  for (const kind of ["number", "sum", "age"] as const) {
    expect(typed(kind).filter((key) => /^\d$/.test(key))).toEqual([..."1234567890"]);
  }
  expect(typed("number", ",")).toContain(",");
  expect(typed("sum")).toContain("+");
  expect(typed("number")).not.toContain("+");
});

test("an age from the keys is an age the entry reads", () => {
  const [years, months] = keysOf("age").filter(({ name }) => name === "years" || name === "months");
  const read = readEntry("ageMonths", `9${years?.key}3${months?.key}`);
  expect(read.ok && read.value.value).toBe(111);
});
