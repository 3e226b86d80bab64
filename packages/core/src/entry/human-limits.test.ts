import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gunzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { HUMAN_LIMITS, SMALLEST_ARM_MM_PER_LENGTH_CM } from "./human-limits.ts";

const folder = process.env.STEELYARD_DATA;

interface Row {
  readonly [column: string]: string;
}

/** The tidy files of the open data: no line breaks within a cell. */
function readTable(file: string): readonly Row[] {
  const [header = "", ...lines] = gunzipSync(readFileSync(join(folder ?? "", file)))
    .toString()
    .trimEnd()
    .split(/\r?\n/);
  const names = cellsOf(header);
  return lines.map((line) => Object.fromEntries(cellsOf(line).map((cell, i) => [names[i] ?? "", cell])));
}

function cellsOf(line: string): readonly string[] {
  return Array.from(
    line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^",]*))/g),
    ([, quoted, plain]) => quoted ?? plain ?? "",
  );
}

const numbers = (rows: readonly Row[], column: string, scale = 1): number[] =>
  rows.flatMap((row) => (row[column] ? [Number(row[column]) * scale] : []));

describe.skipIf(folder === undefined)("HUMAN_LIMITS against the open data (STEELYARD_DATA)", () => {
  const nhanes = folder === undefined ? [] : readTable("nhanes_children.csv.gz");
  const surveys = folder === undefined ? [] : readTable("surveys_children.csv.gz");
  // The README of the data names these as slips of unit in one file.
  const slipMm = [11.1, 12.4, 13.2];
  const lengths = [
    ...numbers(nhanes, "recumbent_length_cm"),
    ...numbers(nhanes, "standing_height_cm"),
    ...numbers(surveys, "height_cm"),
  ];
  const arms = [
    ...numbers(nhanes, "mac_cm", 10),
    ...numbers(surveys, "muac_mm").filter((mm) => !slipMm.includes(mm)),
  ];

  it.each([
    ["lengthCm", lengths, 2],
    ["armMm", arms, 2],
    ["waistCm", numbers(nhanes, "waist_cm"), 2],
    ["thighCm", numbers(nhanes, "thigh_cm"), 4],
    ["calfCm", numbers(nhanes, "calf_cm"), 4],
  ] as const)(
    "%s: from a part of the smallest to one and a half times the largest",
    (field, values, part) => {
      const { low, high } = HUMAN_LIMITS[field];
      const smallest = values.reduce((a, b) => Math.min(a, b));
      const largest = values.reduce((a, b) => Math.max(a, b));
      expect(values.length).toBeGreaterThan(11_000);
      expect(low).toBeLessThanOrEqual(smallest / part);
      expect(low, "rounded outwards, not further").toBeGreaterThan((smallest / part) * 0.85);
      expect(high).toBeGreaterThanOrEqual(largest * 1.5);
      expect(high).toBeLessThan(largest * 1.5 * 1.05);
    },
  );

  it("scaleKg holds every weight of the surveys", () => {
    const values = [...numbers(nhanes, "weight_kg"), ...numbers(surveys, "weight_kg")];
    expect(values.every((kg) => kg >= HUMAN_LIMITS.scaleKg.low && kg <= HUMAN_LIMITS.scaleKg.high)).toBe(
      true,
    );
  });

  it("no child has an arm under 0.9 mm per cm of length, four slips in one survey file aside", () => {
    const ratios = [
      ...nhanes.map((row) => ratio(row.recumbent_length_cm || row.standing_height_cm, row.mac_cm, 10)),
      ...surveys.map((row) => ratio(row.height_cm, row.muac_mm, 1)),
    ].filter((value) => value !== undefined);
    const below = ratios.filter((value) => value < SMALLEST_ARM_MM_PER_LENGTH_CM);
    expect(ratios.length).toBeGreaterThan(58_000);
    expect(below).toHaveLength(4);
    expect(ratios.filter((value) => value < 1)).toHaveLength(4);
  });
});

function ratio(lengthCm: string | undefined, arm: string | undefined, scale: number): number | undefined {
  return lengthCm && arm ? (Number(arm) * scale) / Number(lengthCm) : undefined;
}
