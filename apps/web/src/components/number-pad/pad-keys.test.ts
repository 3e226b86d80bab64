import { readEntry } from "@steelyard/core/entry";
import { expect, test } from "vitest";
import { padKeys } from "./pad-keys.ts";

test("every pad has the ten digits, the mark of the language, and what its field takes", () => {
  const keysOf = (kind: Parameters<typeof padKeys>[0], mark = ".") =>
    padKeys(kind, mark).map(({ key }) => key);
  for (const kind of ["number", "sum", "age"] as const)
    expect(keysOf(kind).filter((key) => /^\d$/.test(key))).toHaveLength(10);
  expect(keysOf("number", ",")).toContain(",");
  expect(keysOf("sum")).toContain("+");
  expect(keysOf("number")).not.toContain("+");
});

test("an age from the keys is an age the entry reads", () => {
  const [years, months] = padKeys("age", ".").filter(({ name }) => name === "years" || name === "months");
  const text = `9${years?.key}3${months?.key}`;
  const read = readEntry("ageMonths", text);
  expect(read.ok && read.value.value).toBe(111);
});
