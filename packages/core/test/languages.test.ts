import { readEntry } from "@steelyard/core/entry";
import {
  type DoseUnit,
  ENGLISH_NUMBERS,
  FRENCH_NUMBERS,
  formatConcentration,
  formatNumber,
  formatQuantity,
  formatWeight,
  writeLabel,
} from "@steelyard/core/units";
import {
  describeEquipmentSize,
  describeField,
  describeSignValue,
  ENGLISH_LANGUAGE,
  FRENCH_LANGUAGE,
} from "@steelyard/core/wording";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { renderAll } from "./support/message-samples.ts";

const RUNS = { seed: 20261125, numRuns: 500 };
const english = renderAll(ENGLISH_LANGUAGE);
const french = renderAll(FRENCH_LANGUAGE);

/** Words of medicine that are written the same. */
const termsOfBoth = new Set(["Infection", "Respiration"]);

const numbersOf = (text: string, pattern: RegExp, toPlain: (number: string) => string): readonly string[] =>
  (text.match(pattern) ?? []).map(toPlain).toSorted();
const englishNumbers = (text: string): readonly string[] =>
  numbersOf(text, /\d+(?:,\d{3})*(?:\.\d+)?/g, (number) => number.replaceAll(",", ""));
const frenchNumbers = (text: string): readonly string[] =>
  numbersOf(text, /\d+(?:\u202f\d{3})*(?:,\d+)?/g, (number) =>
    number.replaceAll("\u202f", "").replace(",", "."),
  );
/** Texts that a sample hands to a message: "xq1". */
const handed = (text: string): readonly string[] => (text.match(/xq\d/g) ?? []).toSorted();

describe.each([
  ["English", english],
  ["French", french],
])("every message in %s", (_, rendered) => {
  it("is there and has no hole", () => {
    expect(rendered.size).toBeGreaterThan(200);
    for (const [place, sentence] of rendered) {
      expect(sentence, place).not.toMatch(/undefined|NaN|null|\[object|Infinity/);
      expect(sentence.trim(), place).not.toBe("");
    }
  });
});

const POINT = /\d\.\d/;
const PLAIN_SPACE = / [:;?!»%]|« |\u00a0[;?!»]|«\u00a0/;
const LOOSE_UNIT = /\d (?:mg|kg|g|mL|mm|cm|J|%|min|microgrammes?|unités?|ans?|mois|jours?)(?!\p{L})/u;

/** What reads alike in both languages and is more than amounts, signs and symbols. */
function englishLeft(rendered: ReadonlyMap<string, string>): readonly string[] {
  return [...rendered]
    .filter(([place, sentence]) => sentence === english.get(place))
    .map(([, sentence]) => sentence.replaceAll(/xq\d/g, ""))
    .filter((sentence) => /\p{L}{3}/u.test(sentence) && !termsOfBoth.has(sentence));
}

describe("French", () => {
  it("has the places of English and hands on the same texts and numbers", () => {
    expect([...french.keys()]).toEqual([...english.keys()]);
    for (const [place, sentence] of french) {
      const source = english.get(place) ?? "";
      expect(handed(sentence), place).toEqual(handed(source));
      expect(frenchNumbers(sentence), `${place}: ${sentence}`).toEqual(englishNumbers(source));
    }
  });

  it("leaves no English: what reads alike is a term of both", () => {
    expect(englishLeft(french)).toEqual([]);
  });

  it("with a sentence left in English, or a point for a comma, is caught", () => {
    const place = "messages.rests.scale#0";
    expect(englishLeft(new Map([...french, [place, english.get(place) ?? ""]]))).toEqual([
      "Read from the scale.",
    ]);
    expect("2.5\u00a0mg").toMatch(POINT);
    expect("Attention :").toMatch(PLAIN_SPACE);
    expect("moins de 28 jours").toMatch(LOOSE_UNIT);
  });

  it("has a decimal comma everywhere, and its own spaces before signs and units", () => {
    for (const [place, sentence] of french) {
      for (const fault of [POINT, PLAIN_SPACE, LOOSE_UNIT]) expect(sentence, place).not.toMatch(fault);
    }
  });

  it("is marked as read by nobody", () => {
    expect(FRENCH_LANGUAGE.unreviewed).toMatch(/Traduction automatique, non relue/);
    expect(ENGLISH_LANGUAGE.unreviewed).toBeUndefined();
  });
});

describe("plurals agree with Intl.PluralRules", () => {
  it.each([
    ["en", ENGLISH_NUMBERS],
    ["fr", FRENCH_NUMBERS],
  ] as const)("%s, for 0, 1, 1.5, 2 and any number", (tag, style) => {
    const rules = new Intl.PluralRules(tag);
    const agrees = (value: number): void => {
      expect(style.plural(value), `${value}`).toBe(rules.select(value) === "one" ? "one" : "other");
    };
    for (const value of [0, 1, 1.5, 1.99, 2, 3, 21]) agrees(value);
    fc.assert(fc.property(fc.double({ min: 0, max: 1e9, noNaN: true }), agrees), RUNS);
  });

  it.each([
    [0, "0 units", "0 unité"],
    [1, "1 unit", "1 unité"],
    [1.5, "1.5 units", "1,5 unité"],
    [2, "2 units", "2 unités"],
  ])("%d units", (amount, en, fr) => {
    expect(formatQuantity({ amount, unit: "unit" }).replace("\u00a0", " ")).toBe(en);
    expect(formatQuantity({ amount, unit: "unit" }, FRENCH_NUMBERS).replace("\u00a0", " ")).toBe(fr);
  });

  it.each([
    [1, "1 dose", "1 dose"],
    [2, "2 doses", "2 doses"],
  ])("%d doses at most", (maximumDoses, en, fr) => {
    const values = { type: "too-many-doses", lineId: "x", atMinutes: 1, doses: 3, maximumDoses } as const;
    expect(ENGLISH_LANGUAGE.dosing.tracking["too-many-doses"](values).replaceAll("\u00a0", " ")).toContain(
      `${en} are`,
    );
    expect(FRENCH_LANGUAGE.dosing.tracking["too-many-doses"](values).replaceAll("\u00a0", " ")).toContain(
      `${fr}.`,
    );
  });
});

describe("numbers in French", () => {
  const units = fc.constantFrom<DoseUnit>("g", "mg", "microgram", "nanogram", "mmol", "unit", "mL", "J");
  const amounts = fc.double({ min: 0, max: 1e7, noNaN: true });

  it("have the digits, the decimal comma and the groups of Intl.NumberFormat", () => {
    const intl = new Intl.NumberFormat("fr", { maximumFractionDigits: 3 });
    const thousandths = fc.integer({ min: 0, max: 999_999 }).map((value) => value / 1000);
    fc.assert(
      fc.property(fc.oneof(thousandths, fc.nat({ max: 999_999_999 })), (value) => {
        expect(formatNumber(value, FRENCH_NUMBERS)).toBe(intl.format(value));
      }),
      RUNS,
    );
  });

  it("are the English ones but for their marks and words, in any quantity", () => {
    const plain = (text: string): string => text.replaceAll("\u202f", "").replace(",", ".");
    fc.assert(
      fc.property(amounts, units, (amount, unit) => {
        const [number = "", name = ""] = formatQuantity({ amount, unit }, FRENCH_NUMBERS).split("\u00a0");
        const [source = "", sourceName = ""] = formatQuantity({ amount, unit }).split("\u00a0");
        expect(number).toMatch(/^(0|[1-9]\d{0,2}(\u202f\d{3})*)(,\d*[1-9])?$/);
        expect(plain(number)).toBe(source.replaceAll(",", ""));
        expect(name.replace("gramme", "gram").replace("unité", "unit").replace(/s$/, "")).toBe(
          sourceName.replace(/s$/, ""),
        );
      }),
      RUNS,
    );
  });

  it("are read back by the entry as the same value", () => {
    const tenths = (low: number, high: number): fc.Arbitrary<number> =>
      fc.integer({ min: low * 10, max: high * 10 }).map((value) => value / 10);
    const back = (field: "lengthCm" | "armMm" | "scaleKg", text: string): number | undefined => {
      const entry = readEntry(field, text);
      return entry.ok ? entry.value.value : undefined;
    };
    fc.assert(
      fc.property(tenths(45, 200), tenths(60, 500), tenths(2, 150), (lengthCm, armMm, kg) => {
        expect(back("lengthCm", formatNumber(lengthCm, FRENCH_NUMBERS))).toBe(lengthCm);
        expect(back("armMm", `${formatNumber(armMm, FRENCH_NUMBERS)}\u00a0mm`)).toBe(armMm);
        expect(back("scaleKg", formatWeight(kg, FRENCH_NUMBERS))).toBe(kg);
      }),
      RUNS,
    );
  });

  it.each([
    ["9 ans", 108],
    ["1 an", 12],
    ["18 mois", 18],
    ["1,5 an", 18],
  ])("the entry takes the age %s", (text, months) => {
    const entry = readEntry("ageMonths", text);
    expect(entry.ok && entry.value.value).toBeCloseTo(months, 6);
  });

  it("rewrite the strength of a label, and nothing else", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999_999 }), units, (thousandths, unit) => {
        const concentration = { amountPerMl: thousandths / 1000, unit };
        const label = formatConcentration(concentration).replaceAll("\u00a0", " ");
        expect(writeLabel(label, FRENCH_NUMBERS)).toBe(formatConcentration(concentration, FRENCH_NUMBERS));
        expect(writeLabel(label, undefined)).toBe(label);
      }),
      RUNS,
    );
    expect(writeLabel("sodium chloride 0.9 %", FRENCH_NUMBERS)).toBe("sodium chloride 0.9 %");
  });
});

describe("what the library puts together by itself speaks French too", () => {
  const plain = (text: string): string => text.replaceAll(/[\u00a0\u202f]/g, " ");
  it.each([
    [describeField("armMm", FRENCH_LANGUAGE.messages), "périmètre brachial"],
    [describeEquipmentSize("tracheal-tube", { value: 5, unit: "mm" }, FRENCH_LANGUAGE.lookup), "5,0 mm"],
    [
      describeEquipmentSize(
        "suction-catheter",
        { value: { low: 6, high: 8 }, unit: "Fr" },
        FRENCH_LANGUAGE.lookup,
      ),
      "6 à 8 Fr",
    ],
    [
      describeEquipmentSize(
        "blood-pressure-cuff",
        { value: 6.5, unit: "cm", bladderLengthCm: 20.5 },
        FRENCH_LANGUAGE.lookup,
      ),
      "largeur 6,5 cm, longueur 20,5 cm",
    ],
    [
      describeSignValue({ value: { low: 67, high: 103 }, unit: "/min" }, FRENCH_LANGUAGE.lookup),
      "67 à 103 par minute",
    ],
  ])("%s", (sentence, expected) => {
    expect(plain(sentence)).toBe(expected);
  });
});
