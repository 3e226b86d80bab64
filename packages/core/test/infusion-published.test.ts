import { type DoseUnit, infusionDose, infusionRateMlPerH, type PerTime } from "@steelyard/core/dosing";
import { describe, expect, it } from "vitest";
import published from "./published/infusions.json" with { type: "json" };

interface Row {
  readonly id: string;
  readonly given: {
    readonly perKg: number;
    readonly unit: string;
    readonly per: string;
    readonly kg: number;
    readonly amountPerMl: number;
    readonly concentrationUnit: string;
  };
  readonly expected: number;
  readonly source: string;
  readonly at: string;
}

const rows: readonly Row[] = published;

describe("published identities of infusions", () => {
  it.each(rows)("$id: $at ($source)", ({ given, expected }) => {
    const unit = given.unit as DoseUnit;
    const concentration = { amountPerMl: given.amountPerMl, unit: given.concentrationUnit as DoseUnit };
    const arithmetic = { kg: given.kg, per: given.per as PerTime, concentration };
    expect(infusionRateMlPerH({ ...arithmetic, perKg: { amount: given.perKg, unit } })).toBe(expected);
    expect(infusionDose({ ...arithmetic, mlPerH: expected, unit }).amount).toBe(given.perKg);
  });
});
