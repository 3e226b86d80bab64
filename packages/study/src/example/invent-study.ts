import { estimateWeight } from "@steelyard/core/body";
import { valueAtZ, whoBmiForAge, whoHeightForAge } from "@steelyard/core/growth";
import { centimetres, millimetres, months } from "@steelyard/core/units";
import { createGenerator } from "../bootstrap/index.ts";

/** Children in the example. */
const CHILDREN = 400;
const CLINICS = ["Larch", "Alder", "Rowan", "Hazel"] as const;
const MEASURERS = ["Imke", "Tomas", "Bao"] as const;

/**
 * An example study: 400 invented children of an invented district, four clinics and three measurers, as CSV text; the same text for the same
 * seed. Heights and weights are drawn around the WHO medians, arms so that the body model would be off by about 5.5 %; some
 * slips of a real file are planted: missing weights, arms in cm, a row entered twice.
 *
 * @source who-growth-2006
 * @source who-growth-2007
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { inventStudy } from "@steelyard/study/example";
 *
 * assert.equal(inventStudy({ seed: 7 }).split("\n").length, 402);
 * assert.match(inventStudy({ seed: 7 }), /^invented,/);
 * ```
 */
export function inventStudy({ seed = 2026 }: { readonly seed?: number } = {}): string {
  const { uniform, normal: standard } = createGenerator(seed);
  const normal = (mean: number, sd: number): number => mean + sd * standard();
  const lines = [
    "invented,child_id,clinic,measurer,sex,age_months,height_cm,arm_mm,carer_kg,weight_kg,age_rule_kg",
  ];
  for (let id = 1; id <= CHILDREN; id++) {
    const sex = uniform() < 0.5 ? "f" : "m";
    const ageMonths = Math.floor(6 + 138 * uniform() ** 1.4);
    const height = within(
      valueAtZ({ standard: whoHeightForAge, sex, at: months(ageMonths), z: clamp(normal(-0.8, 1.1)) }),
    );
    const index = within(
      valueAtZ({ standard: whoBmiForAge, sex, at: months(ageMonths), z: clamp(normal(-0.2, 1.1)) }),
    );
    const weight = index * (height / 100) ** 2;
    const lengthCm = ageMonths < 24 ? height : height + 0.7;
    const arm = armFor({ lengthCm, weightKg: weight * Math.exp(normal(0, 0.055)) });
    const measurer = MEASURERS[Math.floor(MEASURERS.length * uniform())] as string;
    // One of the three reads the tape to whole half centimetres.
    const armRead = measurer === "Bao" ? 5 * Math.round(arm / 5) : Math.round(arm);
    const carer = uniform() < 0.7 ? Math.round(weight * Math.exp(normal(0, 0.1))) : "";
    const years = Math.floor(ageMonths / 12);
    lines.push(
      [
        "yes",
        id,
        CLINICS[Math.floor(CLINICS.length * uniform())],
        measurer,
        sex,
        ageMonths,
        tenth(height),
        id % 97 === 0 ? armRead / 10 : armRead,
        carer,
        id % 80 === 0 ? "" : tenth(weight),
        years >= 1 && years <= 10 ? 2 * (years + 4) : "",
      ].join(","),
    );
  }
  lines[200] = lines[199] as string;
  return `${lines.join("\n")}\n`;
}

/** The arm for which the body model's median is this weight, by bisection. */
function armFor({ lengthCm, weightKg }: { lengthCm: number; weightKg: number }): number {
  let [low, high] = [90, 360];
  for (let i = 0; i < 12; i++) {
    const middle = (low + high) / 2;
    const estimate = estimateWeight({ lengthCm: centimetres(lengthCm), armMm: millimetres(middle) });
    // An arm outside what the fit has seen at this length: back towards the middle.
    const tooLarge = estimate.ok ? estimate.value.totalKg > weightKg : middle > 200;
    if (tooLarge) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

function within(result: ReturnType<typeof valueAtZ>): number {
  if (!result.ok)
    throw new RangeError(
      `Cannot invent a child as its age must be in the tables: current value is ${JSON.stringify(result.error)}`,
    );
  return result.value;
}

function clamp(z: number): number {
  return Math.max(-3, Math.min(3, z));
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
