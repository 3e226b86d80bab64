import { adjustedWeight, bodySurfaceArea, idealWeight, leanWeight } from "@steelyard/core/body";
import {
  bodyMassIndex,
  median,
  statureForTables,
  valueAtZ,
  who2006BmiForAge,
  who2006LengthHeightForAge,
  who2006WeightForAge,
  who2006WeightForStature,
  who2007BmiForAge,
  zScore,
} from "@steelyard/core/growth";
import type { Result } from "@steelyard/core/result";
import { centimetres, days, kilograms, months } from "@steelyard/core/units";
import { describe, expect, it } from "vitest";
import { growthStandard } from "./growth-standards.ts";
import printedRows from "./published/growth.json" with { type: "json" };
import lmsTables from "./published/growth-lms.json" with { type: "json" };

interface Given {
  readonly standard?: string;
  readonly sex?: string;
  readonly at?: number;
  readonly z?: number;
  readonly value?: number;
  readonly indicator?: string;
  readonly kind?: string;
  readonly stance?: string;
  readonly cm?: number;
  readonly ageDays?: number;
  readonly ageMonths?: number;
  readonly weightKg?: number;
  readonly totalKg?: number;
  readonly idealKg?: number;
  readonly statureCm?: number;
  readonly heightCm?: number;
  readonly lengthCm?: number;
}

interface Row {
  readonly id: string;
  readonly check: string;
  readonly given: Given;
  readonly expected: number | readonly number[];
  readonly printedDecimals: number;
  readonly tolerance?: number;
  readonly source: string;
  readonly at: string;
}

const rows: readonly Row[] = printedRows;

describe("published growth figures", () => {
  it.each(rows)("$id $check: $at", ({ check, given, expected, printedDecimals, tolerance }) => {
    const computed = compute(check, given);
    const wanted = [expected].flat();
    const room = (tolerance ?? 0.5 * 10 ** -printedDecimals) + 1e-9;
    expect(computed).toHaveLength(wanted.length);
    for (const [index, value] of wanted.entries()) {
      const got = computed[index] ?? Number.NaN;
      expect(
        Math.abs(got - value),
        `given ${JSON.stringify(given)}: computed ${computed.join(", ")}, printed ${wanted.join(", ")}`,
      ).toBeLessThanOrEqual(room);
    }
  });

  // WHO figures are kept to the last digit; CDC figures are rounded, the next test says how far.
  it.each(lmsTables.filter(({ source }) => source !== "cdc-growth-2000"))(
    "$standard $sex holds the printed L, M, S",
    ({ standard, sex, rows: printed }) => {
      for (const [at = Number.NaN, l, m, s] of printed) {
        expect(growthStandard(standard).lms({ sex: sexOf(sex), at }), `at ${at}`).toEqual({ l, m, s });
      }
    },
  );

  it.each(lmsTables)("$standard $sex is within 0.0005 z of the printed L, M, S", (table) => {
    const standard = growthStandard(table.standard);
    for (const [at = Number.NaN, l = Number.NaN, m = Number.NaN, s = Number.NaN] of table.rows) {
      for (const z of [-2.9, -2, -1, 0, 1, 2, 2.9]) {
        if (1 + l * s * z <= 0) continue; // no value has this z
        const value = m * (1 + l * s * z) ** (1 / l);
        const got = valueIn(zScore({ standard, sex: sexOf(table.sex), at, value }));
        expect(Math.abs(got - z), `at ${at}, value ${value}, z ${got}`).toBeLessThanOrEqual(0.0005);
      }
    }
  });
});

function compute(check: string, given: Given): readonly number[] {
  switch (check) {
    case "median":
      return [valueIn(median(looked(given)))];
    case "l":
    case "s":
      return [looked(given).standard.lms(looked(given))[check]];
    case "value-at-z":
      return [valueIn(valueAtZ({ ...looked(given), z: known(given.z) }))];
    case "sd-row":
      return [-3, -2, -1, 0, 1, 2, 3].map((z) => valueIn(valueAtZ({ ...looked(given), z })));
    case "z-score":
      return [valueIn(zScore({ ...looked(given), value: known(given.value) }))];
    case "who-survey":
      return [surveyZ(given)];
    case "table-stature": {
      const stature = statureForTables(statureOf(known(given.cm), given));
      expect(stature.kind).toBe(given.kind);
      return [stature.cm];
    }
    case "median-index-weight": {
      const at = months(known(given.at));
      const bmi = valueIn(median({ standard: who2007BmiForAge, sex: sexOf(given.sex), at }));
      return [(bmi * known(given.heightCm) ** 2) / 10_000];
    }
    case "ideal-weight":
      return [
        valueIn(
          idealWeight({
            lengthCm: centimetres(known(given.lengthCm)),
            sex: sexOf(given.sex),
            ...(given.ageMonths !== undefined && { ageMonths: months(given.ageMonths) }),
          }),
        ),
      ];
    case "lean-weight":
      return [leanWeight(bodyOf(given))];
    case "body-surface-area":
      return [bodySurfaceArea(bodyOf(given))];
    case "adjusted-weight":
      return [
        adjustedWeight({
          totalKg: kilograms(known(given.totalKg)),
          idealKg: kilograms(known(given.idealKg)),
        }),
      ];
    default:
      throw new Error(`No such check: ${check}`);
  }
}

/** A child as a survey has it, through the rule for length and height, as WHO's software does. */
function surveyZ(given: Given): number {
  const sex = sexOf(given.sex);
  const at = days(known(given.ageDays));
  const stature = statureOf(known(given.statureCm), given);
  const { cm: heightCm } = statureForTables(stature);
  switch (given.indicator) {
    case "length-height-for-age":
      return valueIn(zScore({ standard: who2006LengthHeightForAge, sex, at, value: heightCm }));
    case "weight-for-age":
      return valueIn(
        zScore({ standard: who2006WeightForAge, sex, at, value: kilograms(known(given.weightKg)) }),
      );
    case "weight-for-stature":
      return valueIn(
        zScore({ ...who2006WeightForStature(stature), sex, value: kilograms(known(given.weightKg)) }),
      );
    case "bmi-for-age": {
      const value = bodyMassIndex({ weightKg: kilograms(known(given.weightKg)), heightCm });
      return valueIn(zScore({ standard: who2006BmiForAge, sex, at, value }));
    }
    default:
      throw new Error(`No such indicator: ${given.indicator}`);
  }
}

function looked(given: Given) {
  return {
    standard: growthStandard(given.standard ?? ""),
    sex: sexOf(given.sex),
    at: known(given.at),
  };
}

function statureOf(cm: number, { stance, ageDays }: Given): Parameters<typeof statureForTables>[0] {
  return {
    cm: centimetres(cm),
    ...((stance === "lying" || stance === "standing") && { stance }),
    ...(ageDays !== undefined && { ageDays: days(ageDays) }),
  };
}

function bodyOf({ totalKg, lengthCm }: Given) {
  return { totalKg: kilograms(known(totalKg)), lengthCm: centimetres(known(lengthCm)) };
}

function sexOf(sex: string | undefined): "m" | "f" {
  if (sex === "m" || sex === "f") return sex;
  throw new Error(`A row has no sex: ${sex}`);
}

function known(value: number | undefined): number {
  if (value === undefined) throw new Error("A row lacks a value that its check needs");
  return value;
}

function valueIn<T>(result: Result<T, unknown>): T {
  if (!result.ok) throw new Error(`No value: ${JSON.stringify(result.error)}`);
  return result.value;
}
