import { isConvertible } from "../units/convert-dose.ts";
import type { Dose, DoseUnit } from "../units/index.ts";
import { add, compare, multiply, type Rational, subtract, toNumber } from "../units/rational.ts";
import { type ChildFacts, childFacts } from "./child-facts.ts";
import type { Formulary } from "./formulary.ts";
import { medicineIdOf } from "./line-id.ts";
import { type PreparedUse, prepareUses } from "./prepare-uses.ts";
import type { GivenRecord, TrackedDoses, TrackedLine, TrackingWarning } from "./tracked-doses.ts";
import { amountIn, cumulativeMaximum, factor, singleMaximum, unitOf } from "./use-limits.ts";
import type { Weights } from "./weights.ts";

const NOTHING: Rational = { numerator: 0, denominator: 1 };

/**
 * What has been given, what remains under each cumulative maximum, and when the next dose is due.
 *
 * Sums are exact. A maximum counts every use of the same medicine that is given in comparable units, those included that another
 * formulary had and this one has not (the medicine is what stands before the point of a line's id); one for a number
 * of hours counts the doses of those hours, the one being given included, and so does the number of doses beside it. `given` in any order; `atMinutes` on one
 * clock. Throws a `RangeError` where a dose is not above 0, a time is not finite or a weight is no child's.
 *
 * ```ts
 * import { trackGivenDoses } from "@steelyard/core/dosing";
 * import { kilograms } from "@steelyard/core/units";
 * import { draftFormulary } from "@steelyard/formulary";
 * import assert from "node:assert/strict";
 * const given = [{ lineId: "adrenaline.arrest", dose: { amount: 180, unit: "microgram" }, atMinutes: 0 } as const];
 * const { lines } = trackGivenDoses({ formulary: draftFormulary, weights: { totalKg: kilograms(18) }, given });
 * assert.deepEqual(lines[0]?.nextDue, { earliestMinutes: 3, latestMinutes: 5 });
 * ```
 */
export function trackGivenDoses({
  formulary,
  weights,
  given,
}: {
  readonly formulary: Formulary;
  readonly weights: Weights;
  readonly given: readonly GivenRecord[];
}): TrackedDoses {
  for (const record of given) requireRecord(record);
  const child = childFacts({ weights });
  const uses = prepareUses(formulary);
  const useById = new Map(uses.map((prepared) => [prepared.lineId, prepared]));
  const warnings: TrackingWarning[] = [];
  const counted = [...given]
    .sort((a, b) => a.atMinutes - b.atMinutes)
    .flatMap((record): Counted[] => {
      const { lineId, atMinutes, dose } = record;
      const prepared = useById.get(lineId);
      if (prepared === undefined) {
        warnings.push({ type: "unknown-line", lineId, atMinutes });
        const unit = dose.unit;
        const medicineId = medicineIdOf(lineId);
        const units = uses.filter(({ medicine }) => medicine.id === medicineId).map(unitOf);
        const [expectedUnit] = units;
        if (expectedUnit !== undefined && !units.some((own) => isConvertible(unit, own))) {
          warnings.push({ type: "unit-not-comparable", lineId, atMinutes, dose, expectedUnit });
        }
        return [{ record, medicineId, unit, amount: amountIn(dose, unit) }];
      }
      const unit = unitOf(prepared);
      if (!isConvertible(dose.unit, unit)) {
        warnings.push({ type: "unit-not-comparable", lineId, atMinutes, dose, expectedUnit: unit });
        return [];
      }
      return [{ record, medicineId: prepared.medicine.id, unit, amount: amountIn(dose, unit) }];
    });
  const lineIds = new Set(counted.map(({ record }) => record.lineId));
  const tracked = [...lineIds].flatMap((lineId) => {
    const prepared = useById.get(lineId);
    return prepared === undefined ? [] : [trackLine(prepared, counted, child)];
  });
  return {
    lines: tracked.map(({ line }) => line),
    warnings: [...warnings, ...tracked.flatMap((each) => each.warnings)],
  };
}

/** A dose in the unit of its use; in its own where the formulary has no such use. */
interface Counted {
  readonly record: GivenRecord;
  readonly medicineId: string;
  readonly unit: DoseUnit;
  readonly amount: Rational;
}

function trackLine(
  prepared: PreparedUse,
  counted: readonly Counted[],
  child: ChildFacts,
): { readonly line: TrackedLine; readonly warnings: readonly TrackingWarning[] } {
  const { lineId } = prepared;
  const own = counted.filter(({ record }) => record.lineId === lineId);
  const first = own[0];
  const last = own.at(-1);
  if (first === undefined || last === undefined) {
    throw new TypeError(`Cannot track ${lineId} as it must have a dose`);
  }
  const { unit } = first;
  const { use, medicine } = prepared;
  const { repeat } = use;
  const ofMedicine = counted.filter(
    (other) => other.medicineId === medicine.id && isConvertible(other.unit, unit),
  );
  const inUnit = (amount: Rational): Dose => ({ amount: toNumber(amount), unit });
  const withinH = repeat?.cumulativeMaximum?.withinH;
  /** Those up to and including a time, within the hours that count. */
  const countedAt = (doses: readonly Counted[], atMinutes: number): Counted[] =>
    doses
      .filter(({ record }) => record.atMinutes <= atMinutes)
      .filter(({ record }) => withinH === undefined || record.atMinutes > atMinutes - 60 * withinH);
  const totalAt = (atMinutes: number): Rational =>
    countedAt(ofMedicine, atMinutes).reduce(
      (sum, each) => add(sum, multiply(each.amount, factor(each.unit, unit))),
      NOTHING,
    );

  const maximum = cumulativeMaximum(prepared, unit, child);
  const single = singleMaximum(prepared, unit);
  const warnings: TrackingWarning[] = maximum === "not-known" ? [{ type: "maximum-not-known", lineId }] : [];
  const known = maximum === "not-known" ? undefined : maximum;
  own.forEach(({ record: { atMinutes, dose }, amount }, index) => {
    if (single !== undefined && compare(amount, single) > 0) {
      warnings.push({ type: "single-maximum-passed", lineId, atMinutes, dose, maximum: inUnit(single) });
    }
    const doses = countedAt(own.slice(0, index + 1), atMinutes).length;
    if (repeat?.maximumDoses !== undefined && doses > repeat.maximumDoses) {
      const { maximumDoses } = repeat;
      warnings.push({ type: "too-many-doses", lineId, atMinutes, doses, maximumDoses });
    }
    const before = own[index - 1];
    if (before !== undefined && repeat?.intervalMin !== undefined) {
      const earliestMinutes = before.record.atMinutes + repeat.intervalMin.low;
      if (atMinutes < earliestMinutes)
        warnings.push({ type: "too-soon", lineId, atMinutes, earliestMinutes });
    }
  });

  for (const {
    record: { atMinutes },
  } of ofMedicine) {
    const total = totalAt(atMinutes);
    if (known === undefined || compare(total, known) <= 0) continue;
    const [sum, most] = [inUnit(total), inUnit(known)];
    warnings.push({ type: "cumulative-maximum-passed", lineId, atMinutes, total: sum, maximum: most });
  }

  const nowMinutes = Math.max(...ofMedicine.map(({ record }) => record.atMinutes));
  const totalNow = totalAt(nowMinutes);
  const left = known && (compare(totalNow, known) >= 0 ? NOTHING : subtract(known, totalNow));
  const dosesLeft =
    repeat?.maximumDoses === undefined
      ? undefined
      : Math.max(0, repeat.maximumDoses - countedAt(own, nowMinutes).length);
  const isOver = dosesLeft === 0 || left?.numerator === 0;
  /** When the oldest doses have left the hours that count, so that there is room for another. */
  const freeAgainMinutes = (): number | undefined => {
    if (withinH === undefined) return undefined;
    const leaving = ofMedicine.map(({ record }) => record.atMinutes + 60 * withinH);
    return leaving.find(
      (atMinutes) =>
        atMinutes > nowMinutes &&
        (known === undefined || compare(totalAt(atMinutes), known) < 0) &&
        (repeat?.maximumDoses === undefined || countedAt(own, atMinutes).length < repeat.maximumDoses),
    );
  };
  const noSoonerThan = isOver ? freeAgainMinutes() : Number.NEGATIVE_INFINITY;
  const interval = noSoonerThan === undefined ? undefined : repeat?.intervalMin;
  return {
    line: {
      lineId,
      medicine: medicine.name,
      use: use.title,
      doses: own.length,
      total: inUnit(own.reduce((sum, { amount }) => add(sum, amount), NOTHING)),
      totalOfMedicine: inUnit(totalNow),
      ...(known && { maximum: { dose: inUnit(known), ...(withinH !== undefined && { withinH }) } }),
      ...(left && { remaining: inUnit(left) }),
      ...(dosesLeft !== undefined && { dosesLeft }),
      ...(interval &&
        noSoonerThan !== undefined && {
          nextDue: {
            earliestMinutes: Math.max(last.record.atMinutes + interval.low, noSoonerThan),
            latestMinutes: Math.max(last.record.atMinutes + interval.high, noSoonerThan),
          },
        }),
    },
    warnings,
  };
}

function requireRecord({ lineId, dose, atMinutes }: GivenRecord): void {
  if (!(dose.amount > 0 && dose.amount < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`Cannot track ${lineId} as a dose must be above 0: current value is ${dose.amount}`);
  }
  if (!Number.isFinite(atMinutes)) {
    throw new RangeError(`Cannot track ${lineId} as atMinutes must be finite: current value is ${atMinutes}`);
  }
}
