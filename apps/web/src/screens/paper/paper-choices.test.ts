import { readMeasurements } from "@steelyard/core/entry";
import { ENGLISH_LANGUAGE, FRENCH_LANGUAGE, type Language } from "@steelyard/core/wording";
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
  const words = (language: Language): readonly string[] =>
    measuredWords(read.value.measurements, language)
      .map((own) => own.replaceAll("\u00a0", " "))
      .sort();
  expect(words(ENGLISH_LANGUAGE)).toEqual([
    "age 108 months",
    "age at the earlier weight 96 months",
    "arm circumference 190 mm",
    "earlier weight 25 kg",
    "length 136 cm",
    "sex f",
  ]);
  expect(words(FRENCH_LANGUAGE)).toContain("longueur couchée 136 cm");
  expect(words(FRENCH_LANGUAGE)).toContain("âge 108 mois");
});
