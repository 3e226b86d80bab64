import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { EntryField, QuantityField } from "./entry-field.ts";
import { HUMAN_LIMITS } from "./human-limits.ts";
import { readBurnPercent } from "./read-burn-percent.ts";
import { readEntry } from "./read-entry.ts";

function readAs(field: QuantityField, text: string): number | string {
  const entry = readEntry(field, text);
  return entry.ok ? entry.value.value : entry.error.type;
}

describe("readEntry() reads numbers", () => {
  it.each([
    ["lengthCm", "136", 136],
    ["lengthCm", " 136 ", 136],
    ["lengthCm", "\u00a0136\u202f", 136],
    ["lengthCm", "85.5", 85.5],
    ["lengthCm", "85,5", 85.5],
    ["lengthCm", "136.", 136],
    ["lengthCm", "+136", 136],
    ["lengthCm", "1.36e2", 136],
    ["lengthCm", "136.125", 136.125],
    ["carerKg", "0,450", 0.45],
    ["carerKg", ".5", 0.5],
    ["carerKg", "13,5", 13.5],
    ["ageMonths", "0", 0],
    ["ulnaCm", "19,5", 19.5],
    ["kneeHeightCm", "40", 40],
    ["tibiaCm", "31", 31],
    ["earlierKg", "25", 25],
    ["earlierAgeMonths", "8 y", 96],
  ] as const)("%s %j is %d", (field, text, value) => {
    expect(readAs(field, text)).toBe(value);
  });
});

describe("readEntry() converts units", () => {
  // Exact by definition: inch 25.4 mm, foot 12 in, pound 0.45359237 kg, ounce a sixteenth (NIST Handbook 44, Appendix C).
  it.each([
    ["lengthCm", "1.36 m", 136],
    ["lengthCm", "1,36m", 136],
    ["lengthCm", "1.1 m", 110],
    ["lengthCm", "1360 mm", 136],
    ["lengthCm", "53 in", 134.62],
    ["lengthCm", '53"', 134.62],
    ["lengthCm", "5 ft 4 in", 162.56],
    ["lengthCm", "5'4\"", 162.56],
    ["lengthCm", "1 m 36 cm", 136],
    ["armMm", "19 cm", 190],
    ["armMm", "19 CM", 190],
    ["armMm", "190 mm.", 190],
    ["armMm", "7.5 inches", 190.5],
    ["carerKg", "12 lb 4 oz", 5.5565065325],
    ["carerKg", "1 lb", 0.45359237],
    ["carerKg", "3200 g", 3.2],
    ["ageMonths", "9y", 108],
    ["ageMonths", "9 y 3 m", 111],
    ["ageMonths", "9y3mo", 111],
    ["ageMonths", "1 year 6 months", 18],
    ["ageMonths", "18 mo", 18],
    ["ageMonths", "30.4375 d", 1],
    ["ageMonths", "1.5 y", 18],
  ] as const)("%s %j is %d", (field, text, value) => {
    expect(readAs(field, text)).toBe(value);
  });

  it("and says so, but not for the field's own unit nor for an age", () => {
    const noticed = (field: QuantityField, text: string) => {
      const entry = readEntry(field, text);
      return entry.ok && entry.value.notices;
    };
    expect(noticed("armMm", "19 cm")).toEqual([
      { type: "unit-converted", field: "armMm", text: "19 cm", value: 190 },
    ]);
    expect(noticed("lengthCm", "1 m 36 cm")).toHaveLength(1);
    expect(noticed("armMm", "190 mm")).toEqual([]);
    expect(noticed("ageMonths", "9 y 3 mo")).toEqual([]);
  });
});

describe("readEntry() refuses", () => {
  it.each([
    ["lengthCm", "", "empty"],
    ["lengthCm", "  \t", "empty"],
    ["lengthCm", "abc", "not-a-number"],
    ["lengthCm", "NaN", "not-a-number"],
    ["lengthCm", "Infinity", "not-a-number"],
    ["lengthCm", "1e999", "not-a-number"],
    ["lengthCm", "1e308 m", "not-a-number"],
    ["lengthCm", "0x88", "unit-unknown"],
    ["lengthCm", "~136", "not-a-number"],
    ["lengthCm", "136?", "not-a-number"],
    ["lengthCm", "136 cm (tape)", "not-a-number"],
    ["lengthCm", "1.360,5", "not-a-number"],
    ["lengthCm", "1,360.5", "not-a-number"],
    ["lengthCm", "136 190", "several-numbers"],
    ["lengthCm", "136/190", "several-numbers"],
    ["lengthCm", "136-140", "several-numbers"],
    ["lengthCm", "5 ft 4", "several-numbers"],
    ["lengthCm", "5 ft 14 in", "several-numbers"],
    ["lengthCm", "4 in 5 ft", "several-numbers"],
    ["lengthCm", "1.5 m 20 cm", "several-numbers"],
    ["lengthCm", "1 m -20 cm", "several-numbers"],
    ["lengthCm", "1,360", "ambiguous-separator"],
    ["lengthCm", "136 kg", "unit-unknown"],
    ["lengthCm", "136 zz", "unit-unknown"],
    ["armMm", "-190", "not-positive"],
    ["armMm", "−190", "not-positive"],
    ["armMm", "0", "not-positive"],
    ["ageMonths", "-1 y", "not-positive"],
    ["ageMonths", "9", "unit-missing"],
    ["earlierAgeMonths", "8", "unit-missing"],
    ["kneeHeightCm", "400", "out-of-limits"],
    ["ulnaCm", "0.2", "out-of-limits"],
    ["ageMonths", "25 y", "out-of-limits"],
    ["armMm", "1e9", "out-of-limits"],
    ["armMm", "1000000000", "out-of-limits"],
    ["carerKg", "0.1", "out-of-limits"],
  ] as const)("%s %j: %s", (field, text, type) => {
    expect(readAs(field, text)).toBe(type);
  });

  it("and proposes what a slip of unit would explain, without applying it", () => {
    const proposals = (field: QuantityField, text: string) => {
      const entry = readEntry(field, text);
      if (entry.ok || !("proposals" in entry.error)) return [];
      return entry.error.proposals.map((proposal) =>
        proposal.type === "unit" ? `${proposal.typed} ${proposal.from} = ${proposal.value}` : "",
      );
    };
    expect(proposals("lengthCm", "1.36")).toContain("1.36 m = 136");
    expect(proposals("lengthCm", "1360")).toEqual(["1360 mm = 136"]);
    expect(proposals("armMm", "19")[0]).toBe("19 cm = 190");
    expect(proposals("armMm", "7.5")).toContain("7.5 in = 190.5");
    expect(proposals("scaleKg", "3200")[0]).toBe("3200 g = 3.2");
    expect(proposals("lengthCm", "1,360")).toEqual(["1.36 m = 136", "1.36 ft = 41.4528", "1360 mm = 136"]);
    expect(proposals("ageMonths", "9").slice(-2)).toEqual(["9 mo = 9", "9 y = 108"]);
    expect(proposals("kneeHeightCm", "400")).toEqual(["400 mm = 40"]);
    expect(proposals("armMm", "1e9")).toEqual([]);
    expect(proposals("armMm", "19 mm"), "a unit that was typed was meant").toEqual([]);
  });
});

describe("readEntry() knows the source of a file", () => {
  it("takes a comma for the decimal mark where that is known, and doubts the point instead", () => {
    const comma = { decimalMark: "," } as const;
    expect(readEntry("carerKg", "13,125", comma)).toMatchObject({ ok: true, value: { value: 13.125 } });
    expect(readEntry("lengthCm", "1.360", comma)).toMatchObject({
      ok: false,
      error: { type: "ambiguous-separator" },
    });
  });

  it("takes an age without a unit as months where the column says so", () => {
    expect(readEntry("ageMonths", "18", { ageUnitKnown: true })).toMatchObject({ value: { value: 18 } });
    expect(readEntry("ageMonths", "9y", { ageUnitKnown: true })).toMatchObject({ value: { value: 108 } });
  });
});

describe("readEntry() reads choices", () => {
  it.each([
    ["sex", "F", "f"],
    ["sex", " boy ", "m"],
    ["sex", "2", "f"],
    ["posture", "Half sitting", "half-sitting"],
    ["build", "very thin", "very-thin"],
    ["people", "2", 2],
    ["people", "One", 1],
    ["lengthReadings", " 3 ", 3],
    ["armReadings", "1", 1],
    ["armStepMm", "5 mm", 5],
    ["armStepMm", "1", 1],
    ["missingLimb", "Lower leg", "lower-leg"],
    ["oedema", "Yes", true],
    ["oedema", "0", false],
    ["pregnant", "no", false],
  ] as const)("%s %j is %s", (field, text, value) => {
    expect(readEntry(field, text)).toMatchObject({ ok: true, value: { value } });
  });

  it.each([
    ["people", "3"],
    ["lengthReadings", "0"],
    ["armReadings", "2.5"],
    ["armStepMm", "0.5"],
    ["missingLimb", "tail"],
    ["oedema", "perhaps"],
  ] as const)("but not %s %j", (field, text) => {
    expect(readEntry(field, text)).toMatchObject({ ok: false, error: { type: "not-a-choice" } });
  });

  it("and names the choices when a word is none of them", () => {
    expect(readEntry("sex", "x")).toEqual({
      ok: false,
      error: { type: "not-a-choice", field: "sex", text: "x", choices: ["f", "m"] },
    });
  });
});

describe("readEntry() on any text", () => {
  const fields: readonly EntryField[] = [
    ...(Object.keys(HUMAN_LIMITS) as QuantityField[]),
    "sex",
    "people",
    "armStepMm",
    "oedema",
    "build",
  ];
  const nearlyNumbers = fc.stringMatching(
    /^[-+−]?[\d.,eE ]{0,12} ?(mm|cm|m|in|ft|kg|g|lb|y|mo|'|")?[\d.,]{0,4}$/,
  );

  it("never throws and never yields a non-finite number or one beyond the limits", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...fields),
        fc.oneof(nearlyNumbers, fc.string({ unit: "binary" }), fc.double().map(String)),
        fc.constantFrom(undefined, ".", ","),
        (field, text, mark) => {
          const entry = readEntry(field, text, mark === undefined ? {} : { decimalMark: mark as "." | "," });
          if (entry.ok && typeof entry.value.value === "number") {
            const { low, high } = HUMAN_LIMITS[field as QuantityField];
            expect(entry.value.value).toBeGreaterThanOrEqual(low);
            expect(entry.value.value).toBeLessThanOrEqual(high);
          }
          for (const number of numbersIn(entry)) expect(Number.isFinite(number)).toBe(true);
        },
      ),
      { seed: 20261125, numRuns: 3000 },
    );
  });

  it("reads back every number it is given, with point or comma", () => {
    fc.assert(
      fc.property(fc.integer({ min: 180, max: 3100 }), (tenths) => {
        const text = String(tenths / 10);
        expect(readAs("lengthCm", text)).toBe(tenths / 10);
        expect(readAs("lengthCm", text.replace(".", ","))).toBe(tenths / 10);
      }),
      { seed: 20261125 },
    );
  });

  it("takes no longer on a long text than reading it once", () => {
    expect(readAs("lengthCm", `1${",1".repeat(1e6)}`)).toBe("not-a-number");
  });
});

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

describe("readBurnPercent()", () => {
  it.each([
    ["18", 18],
    [" 18 % ", 18],
    ["7,5", 7.5],
    ["100", 100],
    ["0.5%", 0.5],
  ])("takes %j as %d %% of the body surface", (text, value) => {
    expect(readBurnPercent(text)).toEqual({ ok: true, value });
  });

  it.each([
    ["", "empty"],
    ["lots", "not-a-number"],
    ["10-20", "not-a-number"],
    ["1,200", "not-a-number"],
    ["1.2.3", "not-a-number"],
    ["0", "out-of-limits"],
    ["-5", "out-of-limits"],
    ["100.5", "out-of-limits"],
  ])("refuses %j: %s", (text, type) => {
    expect(readBurnPercent(text)).toMatchObject({ ok: false, error: { type } });
  });
});
