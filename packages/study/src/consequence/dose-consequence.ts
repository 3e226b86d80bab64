import { type Measurements, weighChild } from "@steelyard/core/body";
import { computeSheet, type Formulary, type SheetLine } from "@steelyard/core/dosing";
import { computeEquipment } from "@steelyard/core/equipment";
import { type Kilograms, kilograms } from "@steelyard/core/units";
import { type Proportion, wilsonInterval } from "../analysis/wilson-interval.ts";

export interface DoseConsequenceInput {
  readonly children: readonly {
    readonly measurements: Measurements;
    /** From the scale. */
    readonly trueKg: number;
    /** By the method that is judged. */
    readonly estimateKg: number;
  }[];
  readonly formulary: Formulary;
  /** Told now and then, 0 to 1; false stops with what has been judged. */
  readonly onProgress?: (share: number) => boolean | undefined;
}

/** One line of the sheet over all children whose dose could be judged. */
export interface DoseLineConsequence {
  readonly id: string;
  readonly medicine: string;
  readonly use: string;
  /** Doses as drawn up that lie outside the accepted range per kg of the true weight; above it, and below it. */
  readonly outside: Proportion;
  readonly above: Proportion;
  readonly below: Proportion;
}

/** One item of equipment over all children. */
export interface SizeConsequence {
  readonly id: string;
  /** Sizes that differ from those for the true weight. */
  readonly changed: Proportion;
}

export interface DoseConsequence {
  readonly formularyVersion: string;
  readonly formularySigned: boolean;
  readonly children: number;
  readonly leftOut: number;
  readonly doses: readonly DoseLineConsequence[];
  /** All doses of all children together: their clusters are the children, so the interval is for one dose each. */
  readonly anyOutside: Proportion;
  readonly sizes: readonly SizeConsequence[];
}

/**
 * What a method's errors mean for patients: how often a dose drawn up for the estimate lies outside the formulary's accepted range per
 * kg of the true weight, and how often a size of equipment changes.
 *
 * Every child's sheet is made for the estimate, with all limits and roundings; each dose is then judged against the true weight by the same
 * rule that gives the bedside its robustness (a dose at the single maximum is never too small). Only lines on total weight with an accepted
 * range can be judged. `anyOutside` counts children with at least one dose outside.
 *
 * `children`: weights in kg, positive; others are left out and counted. The formulary is an unsigned draft until a site has signed it.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { centimetres } from "@steelyard/core/units";
 * import { draftFormulary } from "@steelyard/formulary";
 * import { doseConsequence } from "@steelyard/study/consequence";
 *
 * const child = { measurements: { lengthCm: centimetres(100) }, trueKg: 15 };
 * const exact = doseConsequence({ children: [{ ...child, estimateKg: 15 }], formulary: draftFormulary });
 * const far = doseConsequence({ children: [{ ...child, estimateKg: 30 }], formulary: draftFormulary });
 * assert.ok(far.anyOutside.count === 1 && exact.anyOutside.count === 0);
 * ```
 *
 * @source common-practice
 */
export function doseConsequence({ children, formulary, onProgress }: DoseConsequenceInput): DoseConsequence {
  const doses = new Map<string, { medicine: string; use: string; n: number; above: number; below: number }>();
  const sizes = new Map<string, { n: number; changed: number }>();
  let [judged, any] = [0, 0];
  for (const [i, { measurements, trueKg, estimateKg }] of children.entries()) {
    if (i % 64 === 0 && onProgress?.(i / children.length) === false) break;
    if (!(trueKg > 0 && estimateKg > 0)) continue;
    const forEstimate = sheetFor({ measurements, kg: kilograms(estimateKg), trueKg, formulary });
    const forTruth = sheetFor({ measurements, kg: kilograms(trueKg), trueKg, formulary });
    if (forEstimate === undefined || forTruth === undefined) continue;
    judged++;
    let outsideAny = false;
    for (const line of forEstimate.sheet) {
      const outside = isOutside(line);
      if (outside === undefined) continue;
      const sum = doses.get(line.id) ?? { medicine: line.medicine, use: line.use, n: 0, above: 0, below: 0 };
      doses.set(line.id, sum);
      sum.n++;
      if (!outside) continue;
      outsideAny = true;
      if (estimateKg > trueKg) sum.above++;
      else sum.below++;
    }
    if (outsideAny) any++;
    for (const { id, value } of forEstimate.sizes) {
      const truth = forTruth.sizes.find((size) => size.id === id);
      if (truth === undefined) continue;
      const sum = sizes.get(id) ?? { n: 0, changed: 0 };
      sizes.set(id, sum);
      sum.n++;
      if (JSON.stringify(truth.value) !== JSON.stringify(value)) sum.changed++;
    }
  }
  return {
    formularyVersion: formulary.version,
    formularySigned: formulary.signed,
    children: judged,
    leftOut: children.length - judged,
    doses: Array.from(doses, ([id, { medicine, use, n, above, below }]) => ({
      id,
      medicine,
      use,
      outside: wilsonInterval(above + below, n),
      above: wilsonInterval(above, n),
      below: wilsonInterval(below, n),
    })),
    anyOutside: judged === 0 ? { count: 0, n: 0, share: 0, low: 0, high: 1 } : wilsonInterval(any, judged),
    sizes: Array.from(sizes, ([id, { n, changed }]) => ({ id, changed: wilsonInterval(changed, n) })),
  };
}

/** Set on a ventilator, not taken from a drawer: a volume moves with every gram. */
const settings: ReadonlySet<string> = new Set(["tidal-volume", "ventilation-rate"]);

/** A sheet for a weight, judged by a distribution that knows the true weight; a boundary counts for the half, so is neither. */
function sheetFor(given: {
  measurements: Measurements;
  kg: Kilograms;
  trueKg: number;
  formulary: Formulary;
}): { sheet: readonly SheetLine[]; sizes: readonly { id: string; value: unknown }[] } | undefined {
  const { measurements, kg, trueKg, formulary } = given;
  const child = weighChild({ measurements: { ...measurements, scaleKg: kg } });
  if (!child.ok) return undefined;
  const { estimate, weights } = child.value;
  const { ageMonths, sex, armMm } = measurements;
  const { lengthCm } = estimate;
  const cumulative = (at: number): number => (Math.abs(at / trueKg - 1) < 1e-9 ? 0.5 : at > trueKg ? 1 : 0);
  return {
    sheet: computeSheet({ formulary, weights: { ...weights, cumulative }, ageMonths, sex, lengthCm }),
    sizes: computeEquipment({
      ageMonths,
      sex,
      lengthCm,
      totalKg: kg,
      idealKg: weights.idealKg,
      armMm,
    }).flatMap((line) =>
      line.unavailable === undefined && !settings.has(line.item) ? [{ id: line.id, value: line.value }] : [],
    ),
  };
}

/** Undefined where there is no dose or no accepted range to judge it by. */
function isOutside(line: SheetLine): boolean | undefined {
  if (line.unavailable !== undefined || line.robustness === undefined) return undefined;
  return line.robustness.probabilityOutside > 0.75;
}
