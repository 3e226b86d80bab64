import type { Dose, Formulary, InfusionRule, SimpleRule, TieredRateRule, Use } from "@steelyard/core/dosing";
import { isInhaler } from "@steelyard/core/dosing";
import { convertDose, formatNumber, isConvertible } from "@steelyard/core/units";
import type { FormularyFault } from "../formulary-fault.ts";
import { everyOption, type OptionPlace, plain } from "./place.ts";
import { infusionsOf, simpleRulesOf } from "./simple-rules-of.ts";

/**
 * A maximum that already binds a child under the first weight, or never binds below the second, and a minimum
 * that still binds above the third, is nearly always a slip of unit or of a decimal point.
 *
 * @source common-practice
 */
const MAXIMUM_BINDS_FROM_KG = 15;
const MAXIMUM_BINDS_BELOW_KG = 300;
const MINIMUM_BINDS_BELOW_KG = 15;

/** The largest share in print is 1.33, of phenytoin. @source common-practice */
const HIGHEST_SHARE = 2;

/** A child to try the volume on, and between what it is credible, mL. @source common-practice */
const TRIAL_KG = 10;
const CREDIBLE_ML = { low: 0.005, high: 250 } as const;

/** The numbers of a dose make sense together: limits, accepted range, volume, ends of an infusion. */
export function checkDoses(formulary: Formulary): FormularyFault[] {
  return everyOption(formulary).flatMap((optionPlace) => {
    const { option, use, place } = optionPlace;
    const { rule } = option;
    if (rule.kind === "tiered-rate") return tierFaults(rule, place);
    return [
      ...portionFaults(use, simpleRulesOf(rule), place),
      ...infusionsOf(rule).flatMap((infusion) => startFaults(infusion, place)),
      ...doseFaults(optionPlace),
    ];
  });
}

function doseFaults(optionPlace: OptionPlace): FormularyFault[] {
  const { option, place } = optionPlace;
  return [...simpleRulesOf(option.rule), ...(option.further ?? [])].flatMap((simple) => [
    ...limitFaults(simple, place),
    ...shareFaults(simple, place),
    ...acceptedFaults(simple, place),
    ...volumeFaults(simple, optionPlace),
  ]);
}

/** Parts make the whole, and only a fluid runs in parts. */
function portionFaults(
  { administration: { portions } }: Use,
  rules: readonly SimpleRule[],
  place: string,
): FormularyFault[] {
  if (portions === undefined) return [];
  const whole = portions.reduce((sum, { share }) => sum + share, 0);
  return [
    ...(Math.abs(whole - 1) < 1e-9
      ? []
      : [{ place, message: `its parts make ${formatNumber(whole)}, not 1` }]),
    ...(rules.every(({ unit }) => unit === "mL") && rules.length > 0
      ? []
      : [{ place, message: "runs in parts, but is not a dose in mL" }]),
  ];
}

function startFaults(
  { lowPerKg, startPerKg, highPerKg, unit, per }: InfusionRule,
  place: string,
): FormularyFault[] {
  if (lowPerKg <= startPerKg && startPerKg <= highPerKg && lowPerKg < highPerKg) return [];
  const start = plain({ amount: startPerKg, unit, per: `kg/${per}` });
  return [{ place, message: `the start ${start} is not between ${lowPerKg} and ${highPerKg}` }];
}

/** Tiers rise, and the last one is open, so that every weight is counted once. */
function tierFaults({ tiers }: TieredRateRule, place: string): FormularyFault[] {
  return tiers.flatMap(({ upToKg }, index) => {
    const before = tiers[index - 1]?.upToKg ?? 0;
    const isLast = index === tiers.length - 1;
    if (isLast && upToKg !== undefined) {
      return [
        {
          place,
          message: `the last tier ends at ${upToKg} kg, so a heavier child gets no more: leave it open`,
        },
      ];
    }
    if (!isLast && upToKg === undefined)
      return [{ place, message: `tier ${index + 1} is open, but is not the last` }];
    if (upToKg !== undefined && upToKg <= before) {
      return [{ place, message: `tier ${index + 1} ends at ${upToKg} kg, not above ${before} kg` }];
    }
    return [];
  });
}

function limitFaults(rule: SimpleRule, place: string): FormularyFault[] {
  if (rule.kind !== "per-kg") return [];
  const { maximum, minimum, unit, amountPerKg } = rule;
  const faults: FormularyFault[] = [];
  const forKg = (kg: number): string => plain({ amount: amountPerKg * kg, unit });
  const maximumAmount = amountIn(maximum, unit);
  const minimumAmount = amountIn(minimum, unit);
  if (maximum && maximumAmount !== undefined) {
    if (maximumAmount < amountPerKg * MAXIMUM_BINDS_FROM_KG) {
      faults.push({
        place,
        message: `maximum ${plain(maximum)} is below the dose for a child of ${MAXIMUM_BINDS_FROM_KG} kg, ${forKg(MAXIMUM_BINDS_FROM_KG)}`,
      });
    }
    if (maximumAmount > amountPerKg * MAXIMUM_BINDS_BELOW_KG) {
      faults.push({
        place,
        message: `maximum ${plain(maximum)} would be reached by nobody: it is more than the dose for ${MAXIMUM_BINDS_BELOW_KG} kg, ${forKg(MAXIMUM_BINDS_BELOW_KG)}`,
      });
    }
  }
  if (minimum && minimumAmount !== undefined && minimumAmount > amountPerKg * MINIMUM_BINDS_BELOW_KG) {
    faults.push({
      place,
      message: `minimum ${plain(minimum)} is above the dose for a child of ${MINIMUM_BINDS_BELOW_KG} kg, ${forKg(MINIMUM_BINDS_BELOW_KG)}`,
    });
  }
  if (maximum && minimum && maximumAmount !== undefined && minimumAmount !== undefined) {
    if (minimumAmount > maximumAmount) {
      faults.push({ place, message: `minimum ${plain(minimum)} is above the maximum ${plain(maximum)}` });
    }
  }
  return faults;
}

function amountIn(dose: Dose | undefined, unit: Dose["unit"]): number | undefined {
  if (dose === undefined || !isConvertible(dose.unit, unit)) return undefined;
  return convertDose({ dose, to: unit }).amount;
}

/** A share of the excess says how weight is adjusted, and nothing of any other weight; above 2 it is a slip. */
function shareFaults(rule: SimpleRule, place: string): FormularyFault[] {
  if (rule.kind !== "per-kg" || rule.shareOfExcess === undefined) return [];
  if (rule.basis !== "adjusted") {
    return [{ place, message: `has a share of the excess weight, but goes by ${rule.basis} weight` }];
  }
  if (rule.shareOfExcess <= HIGHEST_SHARE) return [];
  return [
    { place, message: `counts ${rule.shareOfExcess} times the excess weight: at most ${HIGHEST_SHARE}` },
  ];
}

function acceptedFaults(rule: SimpleRule, place: string): FormularyFault[] {
  if (rule.kind === "per-m2" || rule.accepted === undefined) return [];
  const { lowPerKg, highPerKg } = rule.accepted;
  const perKg = (amount: number): string => plain({ amount, unit: rule.unit, per: "kg" });
  if (lowPerKg > highPerKg) {
    return [{ place, message: `accepted range runs from ${lowPerKg} down to ${perKg(highPerKg)}` }];
  }
  if (rule.kind === "fixed" || (lowPerKg <= rule.amountPerKg && rule.amountPerKg <= highPerKg)) return [];
  return [
    {
      place,
      message: `dose ${perKg(rule.amountPerKg)} is outside its accepted range, ${lowPerKg} to ${perKg(highPerKg)}`,
    },
  ];
}

function volumeFaults(rule: SimpleRule, { medicine, use, place }: OptionPlace): FormularyFault[] {
  const strength = medicine.strengths.find(({ id }) => id === use.strengths[0]);
  if (rule.kind !== "per-kg" || strength === undefined || isInhaler(strength)) return [];
  const content = [strength, ...(strength.equivalents ?? [])].find(
    ({ expressedAs }) => expressedAs === rule.expressedAs,
  );
  if (content === undefined || !isConvertible(rule.unit, content.unit)) return [];
  const dose: Dose = { amount: rule.amountPerKg * TRIAL_KG, unit: rule.unit };
  const ml = convertDose({ dose, to: content.unit }).amount / content.amountPerMl;
  if (ml >= CREDIBLE_ML.low && ml <= CREDIBLE_ML.high) return [];
  return [
    {
      place,
      message: `a child of ${TRIAL_KG} kg would get ${plain({ amount: ml, unit: "mL" })} of strength ${strength.id}: check dose and strength`,
    },
  ];
}
