import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import type { CleanRow, Known } from "../src/slips/clean-row.ts";
import { loadCleanRows } from "../src/slips/load-clean-rows.ts";
import { falseAlarms, judgeAll, percent, simulateSlips } from "../src/slips/measure-slips.ts";
import { countedWays } from "../src/slips/slip-kinds.ts";
import { writeSlipsLog } from "../src/slips/write-slips-log.ts";

const folder = process.env.STEELYARD_DATA;
const notice = folder ? "" : " (skipped: STEELYARD_DATA is not set)";
// Half a minute on an idle machine for the log, which judges 12,000 slips and 120,000 rows.
const patience = 300_000;

describe("simulated slips", () => {
  const child: CleanRow = {
    source: "invented",
    half: "judged",
    measurements: {
      lengthCm: 136.2,
      armMm: 191,
      waistCm: 58,
      scaleKg: 28.3,
      ageMonths: 110,
    } as CleanRow["measurements"],
  };

  // By hand: 191 mm = 7.52 in; 136.2 cm = 53.6 in = 4.4685 ft; 58 cm = 22.8 in; 28.3 kg = 62.39 lb; 110 months = 9 years and 2 months.
  it.each([
    ["arm in inches, to 0.1", [7.5]],
    ["length in inches, to 0.5", [53.5]],
    ["length in feet, to 0.01", [4.47]],
    ["length in m, to 0.01", [1.36]],
    ["waist in inches, to 0.5", [23]],
    ["weight in pounds, to 0.1", [62.4]],
    ["completed years as months, from 1 year on", [9]],
    ["length and arm", [191, 136.2]],
    ["weight, a tenth", [2.83]],
  ])("%s", (name, expected) => {
    const way = countedWays.find((own) => own.way === name);
    expect(way?.slip(child.measurements, () => 0)?.map(({ value }) => value)).toEqual(expected);
  });

  it("are of ten kinds, and the same every time", () => {
    const slips = simulateSlips({
      rows: [{ ...child, measurements: { ...child.measurements, ageMonths: 30 as never } }],
      ways: countedWays,
      perKind: 200,
    });
    expect(new Set(slips.map(({ way }) => way.kind)).size).toBe(10);
    expect(slips).toHaveLength(2000);
  });

  it("are not called right when another number is proposed", () => {
    // 136.2 cm read to the metre: 1 m is not within half a centimetre of the truth.
    const way = countedWays.find((own) => own.way === "length in m, to 0.01");
    const slipped = [{ measurement: "lengthCm", value: 1.4, tolerance: 0.5 }] as const;
    const [judged] = judgeAll([{ row: child, way: way as never, slipped }], { known: "everything" });
    expect(judged).toMatchObject({ flagged: true, right: false });
  });
});

describe.skipIf(folder === undefined)(`recogniseSlips() in real rows it was not tuned on${notice}`, () => {
  let rows: readonly CleanRow[] = [];
  let judged: readonly CleanRow[] = [];

  beforeAll(() => {
    rows = loadCleanRows(folder ?? "");
    judged = rows.filter(({ half }) => half === "judged");
  }, patience);

  it.each<Known>(["everything", "length and arm"])(
    "recognises at least 95 in 100 of 2,000 slips of ten kinds with %s known",
    (known) => {
      const slips = judgeAll(simulateSlips({ rows: judged, ways: countedWays, perKind: 200 }), { known });
      expect(slips).toHaveLength(2000);
      expect(percent(slips.filter(({ right }) => right).length, slips.length)).toBeGreaterThanOrEqual(95);
      for (const kind of new Set(countedWays.map((way) => way.kind))) {
        const own = slips.filter(({ way }) => way.kind === kind);
        expect(percent(own.filter(({ right }) => right).length, own.length), kind).toBeGreaterThanOrEqual(95);
      }
    },
    patience,
  );

  it.each(["NHANES", "liberiaData anthroDF (round 2)", "nipnTK dp.ex03"])(
    "raises an alarm in at most 1 in 100 untouched rows of %s",
    (source) => {
      const own = judged.filter((row) => row.source === source);
      expect(own.length).toBeGreaterThan(150);
      for (const known of ["everything", "everything but the weight", "length and arm"] as const) {
        const { alarms } = falseAlarms(own, { known });
        expect(percent(alarms, own.length), known).toBeLessThanOrEqual(1);
      }
    },
    patience,
  );

  it(
    "is as the log says, byte for byte",
    () => {
      expect(writeSlipsLog(rows)).toBe(readFileSync(new URL("../slips-log.md", import.meta.url), "utf8"));
    },
    patience,
  );
});
