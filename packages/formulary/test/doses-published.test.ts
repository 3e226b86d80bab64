import { computeSheet, type DoseLine, type WorkingStep } from "@steelyard/core/dosing";
import { kilograms, months } from "@steelyard/core/units";
import { draftFormulary } from "@steelyard/formulary";
import { describe, expect, it } from "vitest";
import published from "./published/doses.json" with { type: "json" };

interface Row {
  readonly id: string;
  readonly given: {
    readonly line: string;
    readonly totalKg: number;
    readonly idealKg: number;
    readonly adjustedKg?: number;
    readonly leanKg?: number;
    readonly option?: string;
    readonly ageMonths?: number;
    readonly burnPercent?: number;
  };
  readonly expected: {
    readonly amount?: number;
    readonly unit?: string;
    readonly ml?: number;
    readonly strength?: string;
    readonly takeMl?: number;
    readonly addMl?: number;
    readonly addedToMl?: number;
    readonly perMlPerH?: number;
    readonly preparation?: string;
    readonly basis?: string;
    readonly limitedBy?: string;
  };
  readonly exact?: { readonly amount: number; readonly unit: string; readonly ml?: number };
  readonly tolerance?: { readonly relative?: number; readonly amount?: number; readonly addedToMl?: number };
  readonly source: string;
  readonly at: string;
}

const rows: readonly Row[] = published;

function computed({ line: id, option, ageMonths, burnPercent, ...kg }: Row["given"]): DoseLine {
  const line = computeSheet({
    formulary: draftFormulary,
    weights: {
      totalKg: kilograms(kg.totalKg),
      idealKg: kilograms(kg.idealKg),
      ...(kg.adjustedKg !== undefined && { adjustedKg: kilograms(kg.adjustedKg) }),
      ...(kg.leanKg !== undefined && { leanKg: kilograms(kg.leanKg) }),
    },
    ...(ageMonths !== undefined && { ageMonths: months(ageMonths) }),
    ...(burnPercent !== undefined && { burnPercent }),
    ...(option !== undefined && { choices: { [id]: option } }),
  }).find((candidate) => candidate.id === id);
  if (line === undefined || line.unavailable) throw new Error(`${id} has no dose`);
  return line;
}

/** The dose before a syringe, a device or a maximum has changed it. */
function exactDose(working: readonly WorkingStep[]) {
  const step = working.find((candidate) => candidate.step === "per-kg");
  return step?.step === "per-kg" ? step.result : undefined;
}

function exactMl(working: readonly WorkingStep[]): number | undefined {
  const step = working.find((candidate) => candidate.step === "volume");
  return step?.step === "volume" ? step.ml : undefined;
}

describe("the draft formulary against published figures", () => {
  it.each(rows)(
    "$id: $given.line, $given.totalKg kg: $at ($source)",
    ({ given, expected, exact, tolerance }) => {
      const line = computed(given);
      const near = (actual: number | undefined, wanted: number, absolute = 0): void => {
        expect(Math.abs((actual ?? Number.NaN) - wanted)).toBeLessThanOrEqual(
          Math.max(absolute, wanted * (tolerance?.relative ?? 0)) + 1e-9 * wanted,
        );
      };
      if (expected.amount !== undefined) near(line.dose.amount, expected.amount, tolerance?.amount);
      if (expected.unit !== undefined) expect(line.dose.unit).toBe(expected.unit);
      if (expected.ml !== undefined) near(line.volume?.ml, expected.ml);
      if (expected.strength !== undefined) expect(line.volume?.strength).toBe(expected.strength);
      if (expected.takeMl !== undefined) {
        expect(line.volume?.dilution).toMatchObject({ takeMl: expected.takeMl, addMl: expected.addMl });
      }
      if (expected.addedToMl !== undefined) {
        near(line.addedTo?.ml, expected.addedToMl, tolerance?.addedToMl);
      }
      if (expected.perMlPerH !== undefined) {
        const prepared = line.preparations?.find(({ id }) => id === expected.preparation);
        expect(prepared?.dosePerMlPerH.amount).toBe(expected.perMlPerH);
      }
      if (expected.basis !== undefined) expect(line.basis).toBe(expected.basis);
      if (expected.limitedBy !== undefined) expect(line.limitedBy).toBe(expected.limitedBy);
      if (exact !== undefined) {
        expect(exactDose(line.working)).toEqual({ amount: exact.amount, unit: exact.unit });
        if (exact.ml !== undefined) expect(exactMl(line.working)).toBe(exact.ml);
      }
    },
  );

  it("names nothing in a row that it does not compare", () => {
    const compared = [
      "amount",
      "unit",
      "ml",
      "strength",
      "takeMl",
      "addMl",
      "addedToMl",
      "perMlPerH",
      "preparation",
      "basis",
      "limitedBy",
    ];
    expect(
      rows.flatMap(({ expected }) => Object.keys(expected)).filter((key) => !compared.includes(key)),
    ).toEqual([]);
    expect(rows.filter((row) => row.tolerance && !("why" in row))).toEqual([]);
  });
});
