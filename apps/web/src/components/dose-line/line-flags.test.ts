import { computeChild } from "@steelyard/core/child";
import type { DosingWarning, SheetLine } from "@steelyard/core/dosing";
import { centimetres, type Millimetres, millimetres } from "@steelyard/core/units";
import { describeDosingWarning } from "@steelyard/core/wording";
import { draftFormulary } from "@steelyard/formulary";
import { expect, test } from "vitest";
import { lineFlags, sharedSentences } from "./line-flags.ts";

function sheetOf({ length, armMm }: { length: number; armMm?: Millimetres }): readonly SheetLine[] {
  const measurements = { lengthCm: centimetres(length), ...(armMm !== undefined && { armMm }) };
  const child = computeChild({ measurements, formulary: draftFormulary });
  if (!child.ok) throw new Error(child.error.type);
  return child.value.sheet;
}

const sheets = [
  sheetOf({ length: 136, armMm: millimetres(190) }),
  sheetOf({ length: 136 }),
  sheetOf({ length: 52, armMm: millimetres(105) }),
  sheetOf({ length: 160, armMm: millimetres(400) }),
  sheetOf({ length: 110, armMm: millimetres(145) }),
];

const isDiluted = (line: SheetLine): boolean =>
  line.unavailable === undefined && line.volume?.dilution !== undefined;

test("no warning of any line is silent: it is a sentence, a few words, or the recipe", () => {
  const seen = new Set<DosingWarning["type"]>();
  for (const sheet of sheets) {
    const shared = new Set(sharedSentences(sheet).map(({ sentence }) => sentence));
    for (const line of sheet) {
      const { loud, quiet } = lineFlags(line, shared);
      for (const warning of line.warnings) {
        seen.add(warning.type);
        if (warning.type === "diluted") expect(isDiluted(line)).toBe(true);
        else if (!loud.includes(describeDosingWarning(warning)))
          expect(quiet.length, line.id).toBeGreaterThan(0);
      }
      if (line.unavailable !== undefined) expect(loud.length).toBeGreaterThan(0);
    }
  }
  // The children above meet every kind that a first sheet is likely to show.
  expect([...seen]).toEqual(
    expect.arrayContaining([
      "rounded",
      "limited",
      "diluted",
      "basis-swapped",
      "bases-differ",
      "age-needed",
      "not-robust",
    ]),
  );
});

test("what asks for a decision is loud on its line", () => {
  const [, lengthAlone = []] = sheets;
  const doubtful = lengthAlone.filter(({ warnings }) => warnings.some(({ type }) => type === "not-robust"));
  expect(doubtful.length).toBeGreaterThan(0);
  for (const line of doubtful) expect(lineFlags(line, new Set()).loud.join()).toContain("too uncertain");
});

test("what more than half of the lines of a problem say is said once above them", () => {
  const [thin = []] = sheets;
  const isSwapped = ({ warnings }: SheetLine): boolean =>
    warnings.some(({ type }) => type === "basis-swapped");
  const swapped = thin.filter(isSwapped).slice(0, 3);
  const others = thin.filter((line) => !isSwapped(line)).slice(0, 3);
  expect(sharedSentences([...swapped, ...others.slice(0, 2)])).toContainEqual({
    sentence: expect.stringMatching(/^Lighter than ideal/),
    isQuiet: true,
  });
  expect(sharedSentences([...swapped, ...others]).filter(({ isQuiet }) => isQuiet)).toEqual([]);
  // Three lines are too few to speak of what is common.
  expect(sharedSentences(swapped)).toEqual([]);
  expect(sharedSentences([])).toEqual([]);
});
