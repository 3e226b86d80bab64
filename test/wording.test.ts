import { cautionBlock } from "@steelyard/core/wording";
import { describe, expect, it } from "vitest";
import { readTextFiles } from "./support/text-files.ts";

const everything = readTextFiles([
  "**/*.{ts,tsx,js,json,md,html,css,grit,cff,svg}",
  ".ci/run",
  ".dependency-cruiser.ts",
]);
const forReaders = everything.filter(({ file }) => /\.md$|^packages\/formulary\/(src|data)\//.test(file));

interface Guard {
  readonly name: string;
  readonly pattern: RegExp;
  readonly wrong: readonly string[];
  readonly right: readonly string[];
}

const doseUnits = "(?:mg|g|kg|mL|ml|micrograms?|nanograms?|units?|mmol|J)\\b";

/** Safe-medication writing, for people and for machines that people read. */
const doseGuards: readonly Guard[] = [
  {
    name: "no trailing zero before a unit",
    pattern: new RegExp(`\\d\\.\\d*0[\\s\u00a0]?${doseUnits}`),
    wrong: ["give 1.0 mg", "2.50 mL"],
    right: ["give 1 mg", "10.05 mL", "100 mg"],
  },
  {
    name: "no naked decimal point",
    pattern: new RegExp(`(?:^|[\\s(])\\.\\d+[\\s\u00a0]?${doseUnits}`, "m"),
    wrong: ["give .5 mg"],
    right: ["give 0.5 mg", "see file .5x"],
  },
  {
    name: "units in full, never IU, U or mcg",
    pattern: /\d\s?(?:IU|U|mcg)\b/,
    wrong: ["100 IU", "5 U", "50 mcg"],
    right: ["100 units", "50 micrograms"],
  },
];

const everywhereGuards: readonly Guard[] = [
  {
    name: "no micro sign",
    pattern: /[\u00b5\u03bc]/,
    wrong: ["5 \u00b5g", "5 \u03bcg"],
    right: ["5 micrograms"],
  },
  {
    name: "no path of one machine",
    pattern: new RegExp(
      ["(?<![\\w.-])/(?:wo", "rk|ho", "me|ro", "ot|t", "mp)/[\\w.-]+|[A-Z]:\\\\Users"].join(""),
    ),
    wrong: [["", "tmp", "report.json"].join("/"), ["", "home", "me"].join("/")],
    right: ["/usr/bin/chromium", "docs/root/tmp.md", "https://example.org/homework/x"],
  },
];

describe.each(doseGuards)("in documents and the formulary: $name", ({ pattern, wrong, right }) => {
  it("holds", () => {
    expect(forReaders.filter(({ text }) => pattern.test(text)).map(({ file }) => file)).toEqual([]);
  });

  it("is seen to be broken where it is", () => {
    expect([...wrong, ...right].filter((text) => pattern.test(text))).toEqual(wrong);
  });
});

describe.each(everywhereGuards)("in every file: $name", ({ pattern, wrong, right }) => {
  it("holds", () => {
    expect(everything.filter(({ text }) => pattern.test(text)).map(({ file }) => file)).toEqual([]);
  });

  it("is seen to be broken where it is", () => {
    expect([...wrong, ...right].filter((text) => pattern.test(text))).toEqual(wrong);
  });
});

describe("the cautions", () => {
  const squeezed = (text: string) => text.replace(/\s+/g, " ");
  const readme = everything.find(({ file }) => file === "README.md")?.text ?? "";

  it.each(cautionBlock().lines)("stand in the README: %s", (line) => {
    expect(squeezed(readme)).toContain(squeezed(line));
  });
});
