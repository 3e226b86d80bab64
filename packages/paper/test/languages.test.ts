import { computeChild } from "@steelyard/core/child";
import { centimetres, millimetres } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import {
  drawBooklet,
  drawChildSheet,
  drawGuide,
  ENGLISH_PAPER,
  type Item,
  type PaperMessages,
  pageSizes,
  renderPdf,
  renderSvg,
} from "@steelyard/paper";
import { FRENCH_PAPER } from "@steelyard/paper/french";
import { describe, expect, it } from "vitest";
import { rendering, sampleContext } from "./support/sample-context.ts";

/** Stands for whatever a message is handed: each value becomes its own name in brackets. */
const values: unknown = new Proxy(
  {},
  {
    get: (_, name) =>
      name === Symbol.toPrimitive || name === "toString" ? () => "‹written›" : `‹${String(name)}›`,
  },
);

/** Every sentence of a catalogue by its place. The words of the library have a test of their own. */
function sentencesOf({ language: _, ...areas }: PaperMessages): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const walk = (place: string, value: unknown): void => {
    if (typeof value === "string") found.set(place, value);
    else if (typeof value === "function") found.set(place, value(values));
    else for (const [key, inner] of Object.entries(value as object)) walk(`${place}.${key}`, inner);
  };
  walk("", areas);
  return found;
}

const english = sentencesOf(ENGLISH_PAPER);
const french = sentencesOf(FRENCH_PAPER);
const handed = (text: string): readonly string[] => [...new Set(text.match(/‹\w+›/g))].toSorted();

/** What reads alike in both languages. */
const termsOfBoth = [".strip.marginLength", ".strip.kilograms", ".strip.range", ".frame.millimetres"];
const wordsOfBoth = ["benzodiazepine", "maximum", "minimum", "page", "total", "Posture", "Date", "kg", ", "];

describe("the French catalogue of the papers", () => {
  it("has every sentence of the English one, with the values that it is handed", () => {
    expect([...french.keys()].toSorted()).toEqual([...english.keys()].toSorted());
    for (const [place, sentence] of french) {
      expect(sentence, place).not.toMatch(/undefined|NaN|\[object/);
      expect(handed(sentence), place).toEqual(handed(english.get(place) ?? ""));
    }
  });

  it("leaves no English but terms of both languages, and has French spaces and decimal commas", () => {
    const alike = [...french].filter(
      ([place, sentence]) =>
        sentence === english.get(place) && !termsOfBoth.includes(place) && !wordsOfBoth.includes(sentence),
    );
    expect(alike.filter(([, sentence]) => /\p{Ll}{3}/u.test(sentence))).toEqual([]);
    for (const [place, sentence] of french) {
      expect(sentence, place).not.toMatch(/\d\.\d/);
      expect(sentence, place).not.toMatch(/ [:;?!»%]|« |\u00a0[;?!»]|«\u00a0/);
      expect(sentence, place).not.toMatch(/[\d›] (?:mg|kg|g|mL|mm|cm|min|%)(?!\p{L})/u);
    }
  });
});

function textsOf(items: readonly Item[], language = "fr"): readonly { text: string; language: string }[] {
  return items.flatMap((item) => {
    if (item.kind === "group") return textsOf(item.items, item.language ?? language);
    return item.kind === "text" ? [{ text: item.text, language }] : [];
  });
}

describe("the length in French papers", () => {
  it("is called longueur: taille is said of the waist and of a standing height alone", () => {
    for (const [place, sentence] of sentencesOf(FRENCH_PAPER)) {
      const others = sentence.replaceAll(/tour de taille|taille debout/gi, "");
      expect(others, place).not.toMatch(/taille/i);
    }
  });
});

describe("a paper in French", () => {
  it("says doses in French and marks the words of the formulary as English, in the PDF and in the SVG", async () => {
    const context = await sampleContext({ formulary: draftFormulary, messages: FRENCH_PAPER });
    const input = { ...context, size: pageSizes.a4, formulary: draftFormulary };
    const drawing = drawBooklet({ ...input, problems: ["anaphylaxis"] });
    expect(drawing.language).toBe("fr");
    const texts = drawing.pages.flatMap(({ items }) => textsOf(items));
    const inFrench = texts.filter(({ language }) => language === "fr").map(({ text }) => text);
    const inEnglish = texts.filter(({ language }) => language === "en").map(({ text }) => text);
    expect(
      inFrench.some((text) =>
        /^\d+ microgrammes = 0,\d+ mL de 1 mg\/mL/.test(text.replaceAll("\u00a0", " ")),
      ),
    ).toBe(true);
    expect(inFrench.filter((text) => /adrenaline|wheeze|injection/.test(text))).toEqual([]);
    expect(inEnglish).toContain("adrenaline, anaphylaxis, IM");
    expect(inEnglish.filter((text) => /kg$|Attention|Surveiller/.test(text))).toEqual([]);
    const pages = { ...drawing, pages: drawing.pages.slice(-1) };
    const file = new TextDecoder("latin1").decode(await renderPdf(pages, { ...context, ...rendering }));
    expect(file).toContain("/Lang (fr)");
    expect(file).toContain("/Lang (en)");
    expect(renderSvg(pages.pages[0] as (typeof pages.pages)[number], { title: "x" })).toContain(
      '<g lang="en">',
    );
  });

  it("in English marks nothing: there is one language on it", async () => {
    const measurements = { lengthCm: centimetres(136), armMm: millimetres(190) };
    const report = computeChild({ measurements, formulary: draftFormulary });
    if (!report.ok) throw new Error(report.error.type);
    const context = await sampleContext({ formulary: draftFormulary });
    const input = { ...context, size: pageSizes.a4, report: report.value, measured: ["136 cm"] };
    const { pages } = drawChildSheet({ ...input, problems: ["anaphylaxis"] });
    expect(
      pages.flatMap(({ items }) => textsOf(items, "")).filter(({ language }) => language !== ""),
    ).toEqual([]);
    const guide = drawGuide(input)
      .pages.flatMap(({ items }) => textsOf(items, ""))
      .map(({ text }) => text);
    expect(guide.join(" ")).not.toContain("Traduction");
  });

  it("takes the words of a site's own formulary to be in the language that it states", async () => {
    const formulary = { ...draftFormulary, language: "fr" };
    const marked = async (messages: PaperMessages): Promise<ReadonlySet<string>> => {
      const context = await sampleContext({ formulary, messages });
      const input = { ...context, size: pageSizes.a4, formulary, problems: ["anaphylaxis"] as const };
      const texts = drawBooklet(input).pages.flatMap(({ items }) => textsOf(items, "page"));
      expect(texts.some(({ text }) => text.includes("restent en anglais"))).toBe(false);
      return new Set(texts.map(({ language }) => language));
    };
    expect(await marked(FRENCH_PAPER)).toEqual(new Set(["page"]));
    expect(await marked(ENGLISH_PAPER)).toEqual(new Set(["page", "fr"]));
  });
});
