import { withoutDrift } from "../units/without-drift.ts";
import type { Measurements } from "./measurements.ts";
import type { SlipChange, SlipKind, SlipName, SlipUnit } from "./slip.ts";

/** One way in which the measurements may have come to be as they are. */
export interface SlipHypothesis {
  readonly kind: SlipKind;
  readonly prior: number;
  readonly changes: readonly SlipChange[];
  /** The measurements without the slip. */
  readonly proposed: Measurements;
}

/**
 * How often each slip happens to a measurement. No published rates of single kinds are known to us, so kinds are equal, except that each way
 * of exchanging digits is one of many, and that a form which asks for one number after the other, arms in mm, has few filled wholly in inches. In sum about 1 in 100 pairs of measurements holds a slip, which is the share the fit leaves room for.
 */
const prior = {
  unit: 1e-3,
  decimalPoint: 1e-3,
  fields: 1e-3,
  outlier: 1e-3,
  digits: 1e-4,
  tape: 1e-4,
} as const;

/** A pound is 0.45359237 kg exactly, an inch 25.4 mm, a foot 12 inches. @source nist-handbook-44 Appendix C */
const toCentimetres = { mm: 0.1, m: 100, in: 2.54, ft: 30.48 } as const;
const toMillimetres = { cm: 10, m: 1000, in: 25.4 } as const;
const toKilograms = { g: 0.001, lb: 0.45359237 } as const;
/** Years written where months were asked for, and months where years were. */
const toMonths = { y: 12, mo: 1 / 12 } as const;

const unitFactors: Readonly<Record<SlipName, Readonly<Partial<Record<SlipUnit, number>>>>> = {
  lengthCm: toCentimetres,
  armMm: toMillimetres,
  waistCm: toCentimetres,
  thighCm: toCentimetres,
  calfCm: toCentimetres,
  headCm: toCentimetres,
  ageMonths: toMonths,
  carerKg: toKilograms,
  scaleKg: toKilograms,
};

/** What one tape measures: in inches all of it, or none. */
const tapeNames = ["lengthCm", "armMm", "waistCm", "thighCm", "calfCm", "headCm"] as const;

const slipNames = Object.keys(unitFactors) as readonly SlipName[];

/** Fields that stand beside each other on a form, or whose numbers are alike. */
const exchangeable: readonly (readonly [SlipName, SlipName])[] = [
  ["lengthCm", "armMm"],
  ["lengthCm", "waistCm"],
  ["lengthCm", "carerKg"],
  ["lengthCm", "scaleKg"],
  ["armMm", "waistCm"],
  ["armMm", "carerKg"],
  ["armMm", "scaleKg"],
];

/** Every slip that could have led to these measurements, what it would have been without it, and how often it happens. */
export function slipHypotheses(measurements: Measurements): readonly SlipHypothesis[] {
  const hypotheses: SlipHypothesis[] = [];
  const add = (kind: SlipKind, own: number, ...changes: readonly SlipChange[]): void => {
    hypotheses.push({ kind, prior: own, changes, proposed: withChanges(measurements, changes) });
  };
  for (const measurement of slipNames) {
    const given = measurements[measurement];
    if (given === undefined) continue;
    const factors = Object.entries(unitFactors[measurement]) as [SlipUnit, number][];
    for (const [from, factor] of factors) {
      add({ type: "unit", from }, prior.unit, { measurement, given, value: withoutDrift(given * factor) });
    }
    if (measurement !== "ageMonths") {
      for (const factor of [10, 0.1]) {
        // Ten times may be a unit as well (cm for mm), which says more.
        if (factors.some(([, own]) => own === factor)) continue;
        const value = withoutDrift(given * factor);
        add({ type: "decimal-point" }, prior.decimalPoint, { measurement, given, value });
      }
    }
    for (const value of withDigitsExchanged(given)) {
      add({ type: "digits-exchanged" }, prior.digits, { measurement, given, value });
    }
    add({ type: "outlier" }, prior.outlier, { measurement, given });
  }
  const taped = tapeNames.flatMap((measurement): SlipChange[] => {
    const given = measurements[measurement];
    const factor = unitFactors[measurement].in;
    return given === undefined || factor === undefined
      ? []
      : [{ measurement, given, value: withoutDrift(given * factor) }];
  });
  if (taped.length > 1) add({ type: "unit", from: "in" }, prior.tape, ...taped);
  for (const [first, second] of exchangeable) {
    const [one, other] = [measurements[first], measurements[second]];
    if (one === undefined || other === undefined || one === other) continue;
    add(
      { type: "fields-exchanged" },
      prior.fields,
      { measurement: first, given: one, value: other },
      { measurement: second, given: other, value: one },
    );
  }
  return hypotheses;
}

function withChanges(measurements: Measurements, changes: readonly SlipChange[]): Measurements {
  const proposed: Record<string, unknown> = { ...measurements };
  for (const { measurement, value } of changes) {
    if (value === undefined) delete proposed[measurement];
    else proposed[measurement] = value;
  }
  return proposed as Measurements;
}

/** The number with each pair of neighbouring digits the other way round: 136 is 316 or 163. */
function withDigitsExchanged(given: number): readonly number[] {
  // Numbers that were computed (a height + 0.7 cm) have more digits than were written; one decimal place is what is read.
  const written = String(Math.round(given * 10) / 10);
  const values: number[] = [];
  for (let i = 0; i + 1 < written.length; i++) {
    const [a, b] = [written[i] as string, written[i + 1] as string];
    if (a === b || a === "." || b === ".") continue;
    const exchanged = `${written.slice(0, i)}${b}${a}${written.slice(i + 2)}`;
    if (!exchanged.startsWith("0")) values.push(Number(exchanged));
  }
  return values;
}
