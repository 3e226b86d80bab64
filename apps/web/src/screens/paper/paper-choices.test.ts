import { readMeasurements } from "@steelyard/core/entry";
import { labelSheets } from "@steelyard/paper";
import { expect, test } from "vitest";
import { measuredWords } from "./measured-words.ts";
import { firstChoices, labelPages, pagesOf, paperKinds, withKind } from "./paper-choices.ts";

test("the sheets of labels are those that the papers know", () => {
  expect([...labelPages]).toEqual(labelSheets.map(({ id }) => id));
});

test("another paper keeps the sheet where it comes on it, and takes its own first one where not", () => {
  for (const kind of paperKinds) expect(pagesOf(kind)).toContain(withKind(firstChoices, kind).page);
  expect(withKind({ ...firstChoices, page: "letter" }, "booklet").page).toBe("letter");
  expect(withKind({ ...firstChoices, page: "letter" }, "labels").page).toBe("70x37");
  expect(withKind({ ...firstChoices, kind: "labels", page: "70x37" }, "child").page).toBe("a4");
});

test("what was measured is said with its unit, and what is not said is left out", () => {
  const read = readMeasurements({
    lengthCm: "136",
    armMm: "190",
    sex: "f",
    ageMonths: "9 y",
    oedema: "no",
    earlierKg: "25",
    earlierAgeMonths: "8 y",
  });
  if (!read.ok) throw new Error("cannot be read");
  expect(
    measuredWords(read.value.measurements)
      .map((words) => words.replaceAll("\u00a0", " "))
      .sort(),
  ).toEqual([
    "age 108 months",
    "arm circumference 190 mm",
    "earlier weight 25 kg at 96 months",
    "length 136 cm",
    "sex f",
  ]);
});
