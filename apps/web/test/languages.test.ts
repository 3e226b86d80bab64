import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { departmentFr } from "../src/department/messages/department.fr.ts";
import { french } from "../src/messages/french.ts";
import { messages } from "../src/messages/index.ts";
import { language, speak } from "../src/messages/language.ts";
import type { Translation } from "../src/messages/translation.ts";

const folder = join(import.meta.dirname, "../src/messages");
const areas = [
  ...readdirSync(folder)
    .filter((file) => /^(\w+\.)?en\.ts$/.test(file))
    .map((file) => ({ file, area: file === "en.ts" ? "page" : file.replace(".en.ts", "") })),
  // All areas of the page of the department in one.
  { file: "../department/messages/department.en.ts", area: "department" },
];
const translation: Translation = { ...french, department: departmentFr };

/** Words that both languages write alike, file formats and names. */
const termsOfBoth = new Set([
  "Steelyard",
  "Steelyard xq6",
  "Doses",
  "JSON",
  "FHIR R4",
  "Note",
  "correction",
  "Menu",
  "Dose",
  "2 doses",
  "dose 2",
  "posture",
  "site",
  "total",
]);

/** Where English shows a decimal point beside the comma, and French has the comma alone. */
const namesAPoint = new Set(["cases.casebook.badKg"]);

/** What the fields of the library are given, not what is read: the same in every language. */
const isValue = (place: string): boolean => /\.options\.\d+\.0$/.test(place);

type Message = (...values: readonly unknown[]) => string;

/** What a parameter of this name is given: counts are varied, the rest are texts that can be found again. */
const counts = new Set([
  "n",
  "count",
  "shown",
  "pages",
  "page",
  "row",
  "fields",
  "expected",
  "place",
  "events",
  "cases",
  "of",
  "value",
  "mm",
  "limit",
  "spread",
  "months",
  "children",
  "rows",
  "uses",
  "medicines",
  "columns",
  "seconds",
  "places",
  "total",
  "percent",
  "before",
  "after",
]);
const others: Readonly<Record<string, unknown>> = {
  field: "lengthCm",
  numbers: [12, 13],
  needsThird: false,
  isLess: true,
  formularySigned: false,
  site: { name: "xq4", createdOn: "2026-11-20", signed: false },
  signed: false,
  own: { fingerprint: "xq5", signers: [{ name: "xq6", role: "xq7", date: "2026-11-20" }] },
  signers: [{ name: "xq6", role: "xq7", date: "2026-11-20" }],
  dates: { from: "2026-01-02", to: "2026-10-03" },
  due: { type: "in", seconds: 75 },
  clock: (seconds: number) => `${seconds}`,
};

const named = (name: string, count: number): unknown =>
  name in others ? others[name] : counts.has(name) ? count : `xq${name.length % 10}`;

/** The message with a sample for every parameter, read off its own source: `(row, fields)` or `({ parts, sum })`. */
function render(message: Message, source: Message, count: number): string {
  const list =
    /^(?:function\s*\w*)?\s*\(?([^=]*?)\)?\s*(?:=>|\{)/s.exec(String(source).replace(/^\(\{/, "({"))?.[1] ??
    "";
  const first = String(source).match(/^\(?\s*\{([^}]*)\}/)?.[1];
  if (first !== undefined) {
    const names = first.split(",").map((name) => name.split(":")[0]?.trim() ?? "");
    return message(Object.fromEntries(names.filter(Boolean).map((name) => [name, named(name, count)])));
  }
  return message(
    ...list
      .split(",")
      .map((name) => name.trim())
      .filter(Boolean)
      .map((name) => named(name, count)),
  );
}

interface Pair {
  readonly place: string;
  readonly en: (count: number) => string;
  readonly fr: (count: number) => string;
}

function pairs(en: unknown, fr: unknown, place: string): readonly Pair[] {
  if (typeof en === "string") return [{ place, en: () => en, fr: () => String(fr) }];
  if (typeof en === "function") {
    const source = en as Message;
    return [
      {
        place,
        en: (count) => render(source, source, count),
        fr: (count) => render(fr as Message, source, count),
      },
    ];
  }
  expect(Object.keys(fr as object), place).toEqual(Object.keys(en as object));
  return Object.entries(en as object).flatMap(([key, child]) =>
    pairs(child, (fr as Readonly<Record<string, unknown>>)[key], `${place}.${key}`),
  );
}

const numbersOf = (text: string, pattern: RegExp, group: string): readonly string[] =>
  (text.match(pattern) ?? []).map((number) => number.replaceAll(group, "").replace(",", ".")).toSorted();
const englishNumbers = (text: string): readonly string[] => numbersOf(text, /\d+(?:,\d{3})*(?:\.\d+)?/g, ",");
const frenchNumbers = (text: string): readonly string[] =>
  numbersOf(text, /\d+(?:\u202f\d{3})*(?:,\d+)?/g, "\u202f");
const handed = (text: string): readonly string[] => (text.match(/xq\d/g) ?? []).toSorted();
const shape = (text: string): string => text.replaceAll(/[\d\u202f]+/g, "#");

const wrongInFrench = [
  /\d\.\d/,
  / [:;?!»%]|« |\u00a0[;?!»]|«\u00a0/,
  /\d (?:mg|kg|g|mL|mm|cm|h|J|%|min|ans?|mois|jours?)(?!\p{L})/u,
];

describe.each(areas)("the words of $area", ({ file, area }) => {
  const load = async (): Promise<readonly Pair[]> => {
    const [en] = Object.values((await import(join(folder, file))) as object);
    return pairs(en, translation[area as keyof Translation], area);
  };

  it("say the same in both languages, with nothing missing", async () => {
    for (const { place, en, fr } of await load()) {
      for (const count of [0, 1, 2, 1234]) {
        const source = en(count);
        const sentence = fr(count);
        for (const text of [source, sentence]) expect(text, place).not.toMatch(/undefined|NaN|null|\[object/);
        expect(handed(sentence), `${place}: ${sentence}`).toEqual(handed(source));
        // A count that English says in words may be a digit in French, and the other way round.
        if (count > 1 && !namesAPoint.has(place))
          expect(frenchNumbers(sentence), `${place}: ${sentence}`).toEqual(englishNumbers(source));
      }
    }
  });

  it("are French in French, in its typography", async () => {
    const alike: string[] = [];
    for (const { place, en, fr } of await load()) {
      const sentence = fr(2);
      if (isValue(place)) {
        expect(sentence, place).toBe(en(2));
        continue;
      }
      if (
        sentence === en(2) &&
        /\p{L}{3}/u.test(sentence.replaceAll(/xq\d/g, "")) &&
        !termsOfBoth.has(sentence)
      )
        alike.push(`${place}: ${sentence}`);
      for (const fault of wrongInFrench) expect(sentence, place).not.toMatch(fault);
    }
    expect(alike).toEqual([]);
  });

  it("take the singular for 0 and 1 in French", async () => {
    for (const { place, en, fr } of await load()) {
      const saysNoneApart = shape(en(0)) !== shape(en(2)) && shape(en(0)) !== shape(en(3));
      if (!saysNoneApart) expect(shape(fr(0)), place).toBe(shape(fr(1)));
    }
  });
});

describe("the checks themselves", () => {
  it("catch a lost value, a word left in English and a point for a comma", () => {
    const [pair] = pairs(
      (count: number) => `${count} cases of xq1`,
      (count: number) => `${count} cases`,
      "planted",
    );
    expect(handed(pair?.fr(2) ?? "")).not.toEqual(handed(pair?.en(2) ?? ""));
    expect(() => pairs({ a: "x", b: "y" }, { a: "x" }, "planted")).toThrow();
    expect("2.5 kg").toMatch(wrongInFrench[0] as RegExp);
  });
});

describe("speak()", () => {
  it("changes the words of the page and the language of the library, and back", () => {
    expect([messages.sheet, language]).toEqual(["Doses", undefined]);
    speak(french);
    expect([messages.nextChild, language?.tag]).toEqual(["Nouvel enfant", "fr"]);
    speak(undefined);
    expect([messages.nextChild, language]).toEqual(["New child", undefined]);
  });
});
