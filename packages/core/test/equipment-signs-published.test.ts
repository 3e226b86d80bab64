import { computeEquipment } from "@steelyard/core/equipment";
import { allowableBloodLoss, computeSigns } from "@steelyard/core/signs";
import { describe, expect, it } from "vitest";
import equipment from "./published/equipment.json" with { type: "json" };
import signs from "./published/signs.json" with { type: "json" };

interface Row {
  readonly id: string;
  readonly given: { readonly totalKg: number };
  readonly line: string;
  /** Which of the choices: what it rests on, or its place; the first when neither is given. */
  readonly rests?: string;
  readonly choice?: number;
  readonly end?: string;
  readonly centile?: number;
  readonly expected: number;
  readonly printedDecimals?: number;
  readonly tolerance?: number;
  readonly source: string;
  readonly at: string;
}

interface Line {
  readonly id: string;
  readonly unavailable?: unknown;
  readonly value?: unknown;
  readonly rests: readonly string[];
  readonly alternatives?: readonly { readonly value: unknown; readonly rests: readonly string[] }[];
  readonly centiles?: readonly { readonly centile: number; readonly value: number }[];
}

function figureOf(lines: readonly Line[], row: Row): unknown {
  const line = lines.find(({ id }) => id === row.line);
  if (line === undefined || line.unavailable !== undefined) throw new Error(`no value: ${row.line}`);
  if (row.centile !== undefined) return line.centiles?.find(({ centile }) => centile === row.centile)?.value;
  const choices = [line, ...(line.alternatives ?? [])];
  const { value } =
    (row.rests === undefined
      ? choices[row.choice ?? 0]
      : choices.find(({ rests }) => rests.join() === row.rests)) ?? {};
  return row.end === undefined ? value : (value as Record<string, number>)[row.end];
}

describe("published sizes of equipment", () => {
  it.each(equipment as readonly Row[])("$id: $at ($source)", (row) => {
    expect(figureOf(computeEquipment(row.given), row)).toBe(row.expected);
  });
});

describe("published normal signs", () => {
  it.each(signs as readonly Row[])("$id: $at ($source)", (row) => {
    const tolerance = row.tolerance ?? 0.5 * 10 ** -(row.printedDecimals ?? 0);
    const figure = figureOf(computeSigns(row.given), row) as number;
    expect(Math.abs(figure - row.expected)).toBeLessThanOrEqual(tolerance);
  });

  it("CV096: 20 kg, 75 mL/kg, haematocrit 0.40 to 0.25 may lose 562.5 mL", () => {
    const given = { bloodVolumeMl: 1500, haematocrit: 0.4, lowestHaematocrit: 0.25 };
    expect(allowableBloodLoss(given)).toBe(562.5);
    expect(allowableBloodLoss({ ...given, haematocrit: 0.2 })).toBe(0);
  });
});
