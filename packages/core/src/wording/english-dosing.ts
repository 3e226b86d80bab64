import type { Basis, Concentration, PerTime } from "../dosing/index.ts";
import {
  type Dose,
  formatConcentration,
  formatNumber,
  formatQuantity,
  formatWeight,
} from "../units/index.ts";
import type { DosingCatalogue } from "./dosing-catalogue.ts";
import { count, writeAge } from "./write-age.ts";
import { writeEdges } from "./write-edges.ts";

const BASIS: Readonly<Record<Basis, string>> = {
  total: "total",
  ideal: "ideal",
  adjusted: "adjusted",
  lean: "lean",
};

const PER_TIME: Readonly<Record<PerTime, string>> = { min: " × 60\u00a0min/h", h: "" };

/** What can be measured next, by its name in the measurements. */
const SETTLING: Readonly<Record<string, string>> = {
  armMm: "arm circumference",
  waistCm: "waist circumference",
  thighCm: "thigh circumference",
  calfCm: "calf circumference",
  headCm: "head circumference",
};

const LIMIT = { "single-maximum": "single maximum", minimum: "minimum" } as const;

function ml(amount: number): string {
  return formatQuantity({ amount, unit: "mL" });
}

function rate(amount: number): string {
  return formatQuantity({ amount, unit: "mL", per: "h" });
}

function strength(concentration: Concentration): string {
  return formatConcentration(concentration);
}

/** "28.1 kg total". */
function weight(kg: number, basis: Basis): string {
  return `${formatWeight(kg)} ${BASIS[basis]}`;
}

/** "1.4 % more", "0.4 % less". */
function difference(percent: number): string {
  return `${formatNumber(Math.abs(percent))}\u00a0% ${percent < 0 ? "less" : "more"}`;
}

function edges(by: "age" | "weight", low: number | undefined, high: number | undefined): string {
  return writeEdges(by === "age" ? writeAge : formatWeight, low, high);
}

function percent(probability: number): string {
  const value = probability * 100;
  return `${value < 1 ? "under 1" : formatNumber(Math.round(value))}\u00a0%`;
}

/** To a tenth of a minute. */
function withinMinutes(minutes: number): number {
  return Math.round(minutes * 10) / 10;
}

function perKg(dose: Dose): string {
  return formatQuantity(dose);
}

/** The English sentences; the source that other languages are translated from. */
export const ENGLISH_DOSING: DosingCatalogue = {
  step: {
    band: ({ by, value, low, high }) =>
      by === "age"
        ? `Age ${writeAge(value)} falls in the band ${edges(by, low, high)}.`
        : `${formatWeight(value)} falls in the band ${edges(by, low, high)}.`,
    "basis-swapped": ({ from, fromKg, toKg }) =>
      `The rule asks for ${BASIS[from]} weight (${formatWeight(fromKg)}); this child is lighter than ideal, so total weight (${formatWeight(toKg)}) is used.`,
    "adjusted-weight": ({ idealKg, share, totalKg, kg }) =>
      `${formatWeight(idealKg)} ideal + ${formatNumber(share)} × (${formatWeight(totalKg)} total − ${formatWeight(idealKg)}) = ${weight(kg, "adjusted")} for this medicine.`,
    "per-kg": ({ perKg: dose, basis, kg, result }) =>
      `${formatQuantity(dose)} × ${weight(kg, basis)} = ${formatQuantity(result)}.`,
    "per-m2": ({ perM2, lengthCm, kg, surfaceM2, result }) =>
      `Body surface = √(${formatNumber(lengthCm)}\u00a0cm × ${formatWeight(kg)} ÷ 3,600) = ${formatNumber(surfaceM2)}\u00a0m²; ${formatQuantity(perM2)} × ${formatNumber(surfaceM2)}\u00a0m² = ${formatQuantity(result)}.`,
    "per-kg-burnt": ({ perKg: dose, basis, kg, burnPercent, result }) =>
      `${formatQuantity(dose)} × ${weight(kg, basis)} × ${formatNumber(burnPercent)}\u00a0% burnt = ${formatQuantity(result)}.`,
    portion: ({ dose, sharePercent, overH, ml: volume, mlPerH }) =>
      `${formatNumber(sharePercent)}\u00a0% of ${formatQuantity(dose)} = ${ml(volume)}, over ${formatNumber(overH)}\u00a0h: ${rate(mlPerH)}.`,
    fixed: ({ result }) => `The dose is ${formatQuantity(result)} whatever the weight.`,
    limit: ({ limit, from, result }) =>
      limit === "single-maximum"
        ? `${formatQuantity(from)} is above the single maximum, so ${formatQuantity(result)} is given.`
        : `${formatQuantity(from)} is below the minimum, so ${formatQuantity(result)} is given.`,
    volume: ({ dose, strength: concentration, ml: volume }) =>
      `${formatQuantity(dose)} ÷ ${strength(concentration)} = ${ml(volume)}.`,
    "weaker-strength": ({ ml: volume, measurableMl, from, to }) =>
      `${ml(volume)} of ${strength(from)} is too little to measure (under ${ml(measurableMl)}) or too coarse, so ${strength(to)} is taken.`,
    dilution: ({ ml: volume, measurableMl, takeMl, addMl, totalMl, diluent, from, to }) =>
      `${ml(volume)} of ${strength(from)} is too little to measure (under ${ml(measurableMl)}): take ${ml(takeMl)} of it and add ${ml(addMl)} of ${diluent}, ${ml(totalMl)} in all, which makes ${strength(to)}.`,
    rounding: ({ exactMl, ml: volume, markMl, syringeMl, byRule, errorPercent }) =>
      byRule
        ? `${ml(exactMl)} is drawn up as ${ml(volume)}, as the source of the dose rounds to ${ml(markMl)} (${difference(errorPercent)}).`
        : syringeMl === undefined
          ? `${ml(exactMl)} is set as ${ml(volume)}, in steps of ${ml(markMl)} (${difference(errorPercent)}).`
          : `${ml(exactMl)} is drawn up as ${ml(volume)} in a ${ml(syringeMl)} syringe, marked every ${ml(markMl)} (${difference(errorPercent)}).`,
    "drawn-up": ({ ml: volume, strength: concentration, result }) =>
      `${ml(volume)} × ${strength(concentration)} = ${formatQuantity(result)}.`,
    equivalent: ({ ml: volume, strength: concentration, of, result }) =>
      `By the label, ${ml(volume)} × ${strength(concentration)} = ${formatQuantity(result)} of ${of}.`,
    puffs: ({ dose, perPuff, exactPuffs, puffs, result, errorPercent }) => {
      const whole = formatQuantity({ amount: puffs, unit: "puff" });
      const exact = formatQuantity({ amount: exactPuffs, unit: "puff" });
      const asked =
        dose.unit === "puff" ? exact : `${formatQuantity(dose)} ÷ ${formatQuantity(perPuff)} = ${exact}`;
      const given = errorPercent === 0 ? "" : `, given as ${whole} (${difference(errorPercent)})`;
      const first = dose.unit === "puff" && errorPercent === 0 ? "" : `${asked}${given}; `;
      return `${first}${whole} × ${formatQuantity(perPuff)} = ${formatQuantity(result)}.`;
    },
    "shortest-time": ({ dose, maximumRate, kg, minutes }) =>
      `${formatQuantity(dose)} ÷ ${kg === undefined ? formatQuantity(maximumRate) : `(${formatQuantity(maximumRate)} × ${formatWeight(kg)})`}: over ${formatNumber(minutes)}\u00a0min or longer.`,
    "least-volume": ({ dose, maximumConcentration, ml: volume }) =>
      `${formatQuantity(dose)} ÷ ${strength(maximumConcentration)}: given in ${ml(volume)} or more.`,
    tiers: ({ basis, parts, result }) =>
      `${parts
        .map(({ kg, perKg: dose }) => `${formatQuantity(dose)} × ${formatWeight(kg)}`)
        .join(" + ")} (${BASIS[basis]} weight) = ${formatQuantity(result)}.`,
    "fluid-rate": ({ perKg: dose, basis, kg, mlPerH }) =>
      `${formatQuantity(dose)} × ${weight(kg, basis)}${dose.per === "kg/min" ? PER_TIME.min : ""} = ${rate(mlPerH)}.`,
    "pump-step": ({ exactMlPerH, mlPerH, errorPercent }) =>
      `${rate(exactMlPerH)} is set as ${rate(mlPerH)} (${difference(errorPercent)}).`,
    "first-hour": ({ ml: volume, allowanceMl, sharePercent }) =>
      `The first hour brings ${ml(volume)}, ${formatNumber(sharePercent)}\u00a0% of the ${ml(allowanceMl)} of maintenance for one hour.`,
    "device-step": ({ exactJ, settingJ, errorPercent }) =>
      `${formatQuantity({ amount: exactJ, unit: "J" })} is set as ${formatQuantity({ amount: settingJ, unit: "J" })}, the nearest setting of the device (${difference(errorPercent)}).`,
    "added-to": ({ ml: volume, diluent }) => `The dose is added to ${ml(volume)} of ${diluent}.`,
    "preparation-left-out": ({ perKg: dose, totalMl, kg, lowKg, highKg }) =>
      `A syringe of ${formatQuantity(dose)} in ${ml(totalMl)} is made up for ${writeEdges(formatWeight, lowKg, highKg)} and not for ${formatWeight(kg)}, so it is left out.`,
    preparation: ({ amount, perKg: dose, kg, totalMl, diluent, concentration }) =>
      dose === undefined || kg === undefined
        ? `${formatQuantity(amount)} made up to ${ml(totalMl)} with ${diluent} = ${strength(concentration)}.`
        : `${formatQuantity(dose)} × ${formatWeight(kg)} = ${formatQuantity(amount)}, made up to ${ml(totalMl)} with ${diluent} = ${strength(concentration)}.`,
    rate: ({ perKg: dose, per, basis, kg, concentration, exactMlPerH, mlPerH, errorPercent }) =>
      `${perKg(dose)} × ${weight(kg, basis)}${PER_TIME[per]} ÷ ${strength(concentration)} = ${rate(exactMlPerH)}${
        errorPercent === 0 ? "" : `, set as ${rate(mlPerH)} (${difference(errorPercent)})`
      }.`,
  },
  warning: {
    limited: ({ by, from, to }) =>
      `Held at the ${LIMIT[by]} of ${formatQuantity(to)}; by weight it would be ${formatQuantity(from)}.`,
    rounded: ({ errorPercent, aboveTolerance, byRule }) =>
      byRule
        ? `Rounded as the source of the dose says: ${difference(errorPercent)} than the exact dose.`
        : aboveTolerance
          ? `Rounded by more than 5\u00a0%: the dose is ${difference(errorPercent)} than the rule gives.`
          : `Rounded to what can be measured: ${difference(errorPercent)} than the rule gives.`,
    "too-concentrated": ({ ml: volume, leastMl }) =>
      `${ml(volume)} is stronger than it may be given: make it up to ${ml(leastMl)} or more.`,
    "no-preparation": ({ kg }) =>
      `The formulary has no preparation for ${formatWeight(kg)}: there is a dose and no rate; make up the syringe by local practice.`,
    "small-burn": ({ burnPercent, fromPercent }) =>
      `${formatNumber(burnPercent)}\u00a0% burnt is less than the ${formatNumber(fromPercent)}\u00a0% that this fluid is reckoned from: drinking may be enough.`,
    "fluid-load": ({ ml: volume, allowanceMl }) =>
      `The first hour of this infusion brings ${ml(volume)}, more than the ${ml(allowanceMl)} of maintenance for one hour: count it in the fluids. A stronger preparation only where the medicine and the vein allow it.`,
    diluted: ({ to }) => `Too little to measure undiluted: dilute to ${strength(to)} first.`,
    "weaker-strength": ({ to }) => `Too little to measure from the usual strength: draw up ${strength(to)}.`,
    "not-measurable": ({ ml: volume }) =>
      `No syringe measures ${ml(volume)} within 10\u00a0%: the dose is exact and has to be diluted by local practice.`,
    "not-in-puffs": ({ puffs, perPuff }) =>
      `The dose is ${formatQuantity({ amount: puffs, unit: "puff" })} of ${formatQuantity(perPuff)}, and a puff cannot be divided: this inhaler does not serve this child.`,
    "basis-swapped": ({ from, fromKg, totalKg }) =>
      `Lighter than ideal weight: dosed on total weight, ${formatWeight(totalKg)}, in place of ${BASIS[from]} weight, ${formatWeight(fromKg)}.`,
    "bases-differ": ({ totalDose, idealDose }) =>
      `Total and ideal weight give doses more than 20\u00a0% apart: ${formatQuantity(totalDose)} on total, ${formatQuantity(idealDose)} on ideal weight.`,
    "age-needed": ({ for: reason, reason: text }) =>
      reason === "band"
        ? "The dose goes by age, which is not known: the one for an unknown age is taken."
        : reason === "neonate"
          ? "If this child may be under 28 days old, the dose does not apply: enter the age."
          : `The age is not known: ${text ?? "a limit of age could not be checked"}`,
    "outside-weight-range": ({ kg, lowKg, highKg, reason }) =>
      `${formatWeight(kg)} is outside the range of this dose (${writeEdges(formatWeight, lowKg, highKg)}): ${reason}`,
    "outside-age-range": ({ ageMonths, lowMonths, highMonths, reason }) =>
      `Age ${writeAge(ageMonths)} is outside the range of this dose (${writeEdges(writeAge, lowMonths, highMonths)}): ${reason}`,
    neonate: ({ because }) =>
      because === "age"
        ? "Under 28 days old: this dose was not written for newborns; use a neonatal formulary."
        : "Under 3\u00a0kg: this dose was not written for so small a child; use a neonatal formulary.",
    "not-robust": ({ probabilityOutside, settledBy }) =>
      `The weight is too uncertain for this dose: ${percent(probabilityOutside)} probability that it lies outside the accepted range for the child's true weight.${
        settledBy
          ? ` Measure the ${SETTLING[settledBy.measurement] ?? settledBy.measurement}: that would leave ${percent(settledBy.probabilityOutside)}.`
          : ""
      }`,
    "outside-accepted-range": ({ dosePerKg }) =>
      `What can be given, ${perKg(dosePerKg)}, lies outside the accepted range.`,
  },
  unavailable: {
    "weight-missing": ({ basis }) => `No dose: it goes by ${BASIS[basis]} weight, which needs a length.`,
    "length-missing": () => "No dose: it goes by body surface, which needs a length.",
    "burn-percent-missing": ({ perPercent }) =>
      `No dose: it goes by the burnt share of the body surface, which is not known; each 1\u00a0% gets ${formatQuantity(perPercent)}.`,
    "age-missing": ({ choices }) =>
      `The dose goes by age, which is not known: ${choices
        .map(
          ({ lowMonths, highMonths, dose, volume }) =>
            `${formatQuantity(dose)}${volume ? ` (${ml(volume.ml)})` : ""} ${writeEdges(writeAge, lowMonths, highMonths)}`,
        )
        .join("; ")}.`,
    "outside-bands": ({ by, value, low, high }) =>
      `No dose: ${by === "age" ? `age ${writeAge(value)}` : formatWeight(value)} is outside the published bands (${edges(by, low, high)}).`,
    contraindicated: ({ by, value, low, high, reason }) =>
      `Contraindicated at ${by === "age" ? `age ${writeAge(value)}` : formatWeight(value)} (meant for ${edges(by, low, high)}): ${reason}`,
  },
  tracking: {
    "unknown-line": ({ lineId }) =>
      `${lineId} is not in this formulary: nothing is known of its limits or its next dose. It counts in the totals of the same medicine where units can be compared.`,
    "unit-not-comparable": ({ dose, expectedUnit }) =>
      `${formatQuantity(dose)} cannot be compared with the rule, which is in ${expectedUnit}: it is not counted.`,
    "single-maximum-passed": ({ dose, maximum }) =>
      `${formatQuantity(dose)} was given, above the single maximum of ${formatQuantity(maximum)}.`,
    "cumulative-maximum-passed": ({ total, maximum }) =>
      `${formatQuantity(total)} have been given in all, above the maximum of ${formatQuantity(maximum)}.`,
    "too-many-doses": ({ doses, maximumDoses }) =>
      `${count(doses, "dose")} have been given; ${count(maximumDoses, "dose")} are the most.`,
    "too-soon": ({ atMinutes, earliestMinutes }) =>
      `Given ${formatNumber(withinMinutes(earliestMinutes - atMinutes))}\u00a0min before it was due.`,
    "maximum-not-known": () =>
      "The maximum over all doses goes by a weight that is not known, so it could not be checked.",
  },
  burnPercent: {
    empty: () => "Enter the burnt share of the body surface in %.",
    "not-a-number": ({ text }) =>
      `"${text}" is not a share of the body surface: enter a number of percent, such as 18.`,
    "out-of-limits": ({ value, low, high }) =>
      `The burnt share of the body surface must be above ${formatNumber(low)} and at most ${formatNumber(high)}\u00a0%: ${formatNumber(value)}\u00a0% was entered.`,
  },
  robustnessOmitted: {
    "weight-measured": "The weight was read from a scale.",
    "basis-not-total": "The dose does not go by total weight, so the doubt about it does not enter.",
    "no-accepted-range": "The formulary has no accepted range for this dose.",
    titrated: "The dose is adjusted to its effect.",
  },
};
