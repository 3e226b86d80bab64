import { describe, expect, it } from "vitest";
import { importStudy, openStudyFile } from "../import/index.ts";
import type { StudyTable } from "../table/study-table.ts";
import { assessQuality } from "./assess-quality.ts";
import { chiSquaredTail9, digitPreference } from "./digit-preference.ts";

async function tableOf(text: string): Promise<StudyTable> {
  const file = await openStudyFile(new TextEncoder().encode(text));
  const study = file.ok ? importStudy(file.value) : file;
  if (!study.ok) throw new Error(JSON.stringify(study.error));
  return study.value.table;
}

describe("chiSquaredTail9()", () => {
  // Critical values of printed tables of chi-squared, 9 degrees of freedom (Abramowitz and Stegun, table 26.8).
  it.each([
    [16.919, 0.05],
    [21.666, 0.01],
    [8.3428, 0.5],
    [4.16816, 0.9],
    [27.877, 0.001],
  ])("is %d beyond which lies %d", (x, p) => {
    expect(chiSquaredTail9(x)).toBeCloseTo(p, 4);
  });
});

describe("digitPreference()", () => {
  it("is 100 where one digit only was read, and knows it is no chance", () => {
    const rounded = digitPreference(
      Float64Array.from({ length: 100 }, (_, i) => 80 + i),
      { step: 0.1 },
    );
    expect(rounded?.score).toBeCloseTo(100, 9);
    expect(rounded?.p).toBeLessThan(1e-10);
  });

  it("needs fifty readings", () => {
    expect(
      digitPreference(
        Float64Array.from({ length: 49 }, (_, i) => i),
        { step: 1 },
      ),
    ).toBeUndefined();
  });
});

describe("assessQuality()", () => {
  const rows = Array.from(
    { length: 60 },
    (_, i) =>
      `${i < 30 ? "Ada" : "Bo"},m,${24 + i},${(85 + i * 0.55).toFixed(1)},${150 + (i % 12)},${(12 + i * 0.1).toFixed(1)}`,
  );
  const header = "measurer,sex,age_months,height_cm,arm_mm,weight_kg";

  it("flags, finds what is entered twice and what does not belong together, by measurer", async () => {
    const broken = [...rows];
    broken[5] = "Ada,m,29,87.8,155,32.5";
    broken[40] = "Bo,m,64,107.0,154,";
    broken.push(rows[7] as string);
    const quality = assessQuality(await tableOf([header, ...broken].join("\n")), { by: ["measurer"] });
    expect(quality.rows).toBe(61);
    expect(quality.duplicates).toEqual({ rows: 1, first: [[8, 61]] });
    expect(quality.flags.find(({ indicator }) => indicator === "weight-for-age")).toMatchObject({
      flagged: 1,
      first: [6],
    });
    expect(quality.slipSearch.slips.map(({ row }) => row)).toContain(6);
    expect(quality.missing.find(({ column }) => column === "weightKg")).toEqual({
      column: "weightKg",
      rows: 1,
    });
    const [byMeasurer] = quality.by;
    expect(byMeasurer?.groups.map(({ name, rows }) => [name, rows])).toEqual([
      ["Ada", 31],
      ["Bo", 30],
    ]);
    expect(byMeasurer?.groups.map(({ slips }) => slips)).toEqual([1, 0]);
  });

  it("finds nothing in rows that are clean", async () => {
    const quality = assessQuality(await tableOf([header, ...rows].join("\n")));
    expect(quality.duplicates.rows).toBe(0);
    expect(quality.slipSearch.slips).toEqual([]);
    expect(quality.flags.every(({ flagged }) => flagged === 0)).toBe(true);
  });
});
