import { readFileSync } from "node:fs";
import { join } from "node:path";
import { zScore } from "@steelyard/core/growth";
import { describe, expect, it } from "vitest";
import { growthStandards } from "./growth-standards.ts";

// The published tables in full are open data outside this repository; growth-lms.json is the part that always runs.
const folder = process.env.STEELYARD_DATA;
const notice = folder ? "" : " (skipped: STEELYARD_DATA is not set)";

const origin: Readonly<Record<string, string>> = {
  who2006WeightForLength: "WHO2006 weight_for_length_kg",
  who2006WeightForHeight: "WHO2006 weight_for_height_kg",
  who2006LengthHeightForAge: "WHO2006 length_height_for_age_cm",
  who2006WeightForAge: "WHO2006 weight_for_age_kg",
  who2006BmiForAge: "WHO2006 bmi_for_age",
  who2006HeadCircumferenceForAge: "WHO2006 head_circumference_for_age_cm",
  who2006ArmCircumferenceForAge: "WHO2006 arm_circumference_for_age_cm",
  who2007HeightForAge: "WHO2007 height_for_age_cm",
  who2007BmiForAge: "WHO2007 bmi_for_age",
  who2007WeightForAge: "WHO2007 weight_for_age_kg",
  mramba2017ArmCircumferenceForAge: "Mramba2017 arm_circumference_for_age_cm",
  cdc2000WeightForAge: "CDC2000 weight_for_age_kg",
  cdc2000LengthForAge: "CDC2000 length_for_age_cm",
  cdc2000StatureForAge: "CDC2000 stature_for_age_cm",
  cdc2000BmiForAge: "CDC2000 bmi_for_age",
  cdc2000HeadCircumferenceForAge: "CDC2000 head_circumference_for_age_cm",
  cdc2000WeightForLength: "CDC2000 weight_for_length_kg",
  cdc2000WeightForStature: "CDC2000 weight_for_stature_kg",
};

type Row = readonly [x: number, l: number, m: number, s: number];

function readTables(): ReadonlyMap<string, readonly Row[]> {
  const tables = new Map<string, Row[]>();
  const lines = readFileSync(join(folder ?? "", "growth_lms.csv"), "utf8")
    .trim()
    .split("\n")
    .slice(1);
  for (const line of lines) {
    const [source, indicator, sex, , ...numbers] = line.split(",");
    const [x = Number.NaN, l = Number.NaN, m = Number.NaN, s = Number.NaN] = numbers.map(Number);
    const key = `${source} ${indicator} ${sex}`;
    const rows = tables.get(key) ?? [];
    rows.push([x, l, m, s]);
    tables.set(key, rows);
  }
  return tables;
}

/** The z of a value and the value at a z, written here anew from WHO's description. */
const valueAt = ([, l, m, s]: Row, z: number) =>
  Math.abs(l) < 1e-7 ? m * Math.exp(s * z) : m * (1 + l * s * z) ** (1 / l);

function valueByRule(row: Row, z: number, adjusted: boolean): number {
  if (!adjusted || Math.abs(z) <= 3) return valueAt(row, z);
  const sign = Math.sign(z);
  const step = Math.abs(valueAt(row, 3 * sign) - valueAt(row, 2 * sign));
  return valueAt(row, 3 * sign) + (z - 3 * sign) * step;
}

const zGrid = [-4, -3.5, -3, -2, -1, 0, 1, 2, 3, 3.5, 4];

describe.skipIf(!folder)(`compact tables against the full published tables${notice}`, () => {
  const tables = folder ? readTables() : new Map<string, readonly Row[]>();
  const cases = Object.entries(origin).flatMap(([name, table]) =>
    (["m", "f"] as const).map((sex) => ({ name, sex, table: `${table} ${sex.toUpperCase()}` })),
  );

  it("covers every standard that comes from one table", () => {
    const joined = ["whoHeightForAge", "whoWeightForAge", "whoBmiForAge"];
    expect([...Object.keys(origin), ...joined].sort()).toEqual([...growthStandards.keys()].sort());
  });

  it.each(cases)("$name $sex stays within 0.0005 z at and between all rows", ({ name, sex, table }) => {
    const standard = growthStandards.get(name);
    const { low, high } = standard?.index ?? { low: Number.NaN, high: Number.NaN };
    const rows = (tables.get(table) ?? []).filter(([x]) => x >= low && x <= high);
    expect(rows.length).toBeGreaterThan(30);
    expect([rows.at(0)?.[0], rows.at(-1)?.[0]]).toEqual([low, high]);
    let worst = { error: 0, at: 0, z: 0 };
    for (const [index, row] of rows.entries()) {
      for (const place of [row, middle(name, row, rows[index + 1] ?? row)]) {
        for (const z of zGrid) {
          const value = valueByRule(place, z, standard?.adjustedBeyond3Sd ?? false);
          // Where the Box-Cox curve has no value for this z, or one of more kg, cm or kg/m2 than zScore() takes.
          if (!(value > 0 && value <= 1000)) continue;
          const got = standard && zScore({ standard, sex, at: place[0], value });
          const error = got?.ok ? Math.abs(got.value - z) : Number.POSITIVE_INFINITY;
          if (error > worst.error) worst = { error, at: place[0], z };
        }
      }
    }
    expect(worst.error, JSON.stringify(worst)).toBeLessThanOrEqual(name.startsWith("cdc") ? 0.0005 : 1e-9);
  });
});

/** Half-way between two rows; where length turns into height, half-way counts as the 731st day. */
function middle(name: string, first: Row, second: Row): Row {
  const switches = name === "who2006LengthHeightForAge" || name === "who2006BmiForAge";
  if (switches && second[0] === 731) return [730.5, second[1], second[2], second[3]];
  const half = (index: 0 | 1 | 2 | 3) => (first[index] + second[index]) / 2;
  return [half(0), half(1), half(2), half(3)];
}
