import type {
  Dose,
  DoseUnit,
  Formulary,
  InfusionRule,
  InhalerStrength,
  SimpleRule,
  Strength,
  TieredRateRule,
} from "@steelyard/core/dosing";
import { isInhaler, isRunning } from "@steelyard/core/dosing";
import { isConvertible } from "@steelyard/core/units";
import type { FormularyFault } from "../formulary-fault.ts";
import { everyOption, type OptionPlace } from "./place.ts";
import { infusionsOf, simpleRulesOf } from "./simple-rules-of.ts";

/** Every unit can be compared with those it meets: dose with limit, with strength, with what it is given as. */
export function checkUnits(formulary: Formulary): FormularyFault[] {
  return everyOption(formulary).flatMap((place) => [
    ...limitUnits(place),
    ...strengthUnits(place),
    ...kindUnits(place),
    ...puffUnits(place),
    ...oneTime(place),
    ...cumulativeUnits(place),
    ...givingUnits(place),
  ]);
}

/** Every rule of an option that asks for an amount. */
function amountsOf({ option }: OptionPlace): (SimpleRule | InfusionRule | TieredRateRule)[] {
  const { rule } = option;
  return rule.kind === "tiered-rate"
    ? [rule]
    : [...infusionsOf(rule), ...simpleRulesOf(rule), ...(option.further ?? [])];
}

function unitsOf(place: OptionPlace): DoseUnit[] {
  return [...new Set(amountsOf(place).map(({ unit }) => unit))];
}

function limitUnits(optionPlace: OptionPlace): FormularyFault[] {
  const { place } = optionPlace;
  return amountsOf(optionPlace).flatMap((rule) => {
    if (rule.kind === "fixed") return [];
    const named: [string, Dose | undefined][] = [
      ["maximum", rule.maximum],
      ["minimum", "minimum" in rule ? rule.minimum : undefined],
    ];
    return named.flatMap(([name, dose]) =>
      dose === undefined || isConvertible(dose.unit, rule.unit)
        ? []
        : [{ place, message: `${name} is in ${dose.unit}, but the dose is in ${rule.unit}` }],
    );
  });
}

function strengthUnits(optionPlace: OptionPlace): FormularyFault[] {
  const { medicine, use, option, place } = optionPlace;
  const units = unitsOf(optionPlace);
  const strengths = medicine.strengths.filter(({ id }) => use.strengths.includes(id));
  const mismatched = strengths.flatMap((strength) =>
    amountsOf(optionPlace).flatMap((rule) => contentFaults(strength, rule, place)),
  );
  const preparations = use.preparations ?? [];
  const unprepared = preparations.flatMap((preparation) =>
    units
      .filter((unit) => !isConvertible(preparation.unit, unit))
      .map((unit) => ({
        place,
        message: `preparation ${preparation.id} is in ${preparation.unit}, but the dose is in ${unit}`,
      })),
  );
  const isInfusion = infusionsOf(option.rule).length > 0;
  const needsStrength = !isInfusion && units.some((unit) => unit !== "mL" && unit !== "J");
  const needsPreparation = isInfusion && !units.includes("mL");
  return [
    ...uniqueFaults(mismatched),
    ...unprepared,
    ...(needsStrength && use.strengths.length === 0
      ? [{ place, message: "has no strength, so no volume can be given" }]
      : []),
    ...(needsPreparation && preparations.length === 0
      ? [{ place, message: "is an infusion, but nothing says how the syringe is made up" }]
      : []),
  ];
}

/** A salt and its element are kept apart: a dose of one is drawn only from a label that states that one. */
function contentFaults(
  strength: Strength,
  { unit, ...rule }: SimpleRule | InfusionRule | TieredRateRule,
  place: string,
): FormularyFault[] {
  if (unit === "mL") return [];
  if (isInhaler(strength)) return puffFaults(strength, unit, place);
  const of = "expressedAs" in rule ? rule.expressedAs : undefined;
  const content = [strength, ...(strength.equivalents ?? [])].find(({ expressedAs }) => expressedAs === of);
  if (content === undefined) {
    const message =
      of === undefined
        ? `strength ${strength.id} counts ${strength.expressedAs}, but the dose does not say that it is of ${strength.expressedAs}`
        : `strength ${strength.id} does not state its content of ${of}, which the dose is of`;
    return [{ place, message }];
  }
  if (isConvertible(content.unit, unit)) return [];
  return [
    {
      place,
      message: `strength ${strength.id} is in ${content.unit} per mL, but the dose is in ${unit}`,
    },
  ];
}

function puffFaults(strength: InhalerStrength, unit: DoseUnit, place: string): FormularyFault[] {
  if (unit === "puff" || isConvertible(strength.unit, unit)) return [];
  return [
    { place, message: `strength ${strength.id} is in ${strength.unit} per puff, but the dose is in ${unit}` },
  ];
}

/** A puff is of one inhaler, and what is drawn up and what is inhaled are two uses. */
function puffUnits(optionPlace: OptionPlace): FormularyFault[] {
  const { medicine, use, option, place } = optionPlace;
  const strengths = medicine.strengths.filter(({ id }) => use.strengths.includes(id));
  const inhalers = strengths.filter(isInhaler);
  const inPuffs = unitsOf(optionPlace).includes("puff");
  const messages = [
    ...(inPuffs && inhalers.length === 0 ? ["is in puffs, but no strength says what a puff holds"] : []),
    ...(inPuffs && inhalers.length > 1 ? ["is in puffs of more than one inhaler: which one?"] : []),
    ...(inhalers.length > 0 && inhalers.length < strengths.length
      ? ["has an inhaler beside a strength that is drawn up: make two uses of it"]
      : []),
    ...(inhalers.length > 0 && isRunning(option.rule) ? ["is an infusion, and an inhaler cannot run"] : []),
    ...inhalers.flatMap(({ id, containerPuffs }) =>
      amountsOf(optionPlace).some(
        (rule) => rule.kind === "fixed" && rule.unit === "puff" && rule.amount > containerPuffs,
      )
        ? [`asks for more puffs than the ${containerPuffs} of strength ${id}`]
        : [],
    ),
    ...(amountsOf(optionPlace).some(
      (rule) => rule.kind === "fixed" && rule.unit === "puff" && !Number.isInteger(rule.amount),
    )
      ? ["asks for part of a puff"]
      : []),
  ];
  return messages.map((message) => ({ place, message }));
}

/** A pump that is set for one age must not count another way at the next. */
function oneTime({ option: { rule }, place }: OptionPlace): FormularyFault[] {
  const counted = new Set(infusionsOf(rule).map(({ unit, per }) => `${unit}/kg/${per}`));
  if (counted.size < 2) return [];
  return [{ place, message: `counts in ${[...counted].join(" and ")}: all bands must count in one` }];
}

function uniqueFaults(faults: readonly FormularyFault[]): FormularyFault[] {
  const seen = new Map(faults.map((fault) => [fault.message, fault]));
  return [...seen.values()];
}

function kindUnits(optionPlace: OptionPlace): FormularyFault[] {
  const { medicine, place, formulary } = optionPlace;
  const inJoules = unitsOf(optionPlace).includes("J");
  if (inJoules && formulary.deviceEnergiesJ.length === 0) {
    return [{ place, message: "is an energy, but the formulary lists no device energies" }];
  }
  if (inJoules === (medicine.kind === "energy")) return [];
  return [{ place, message: inJoules ? "is in J, but is not an energy" : "is an energy, but not in J" }];
}

function cumulativeUnits(optionPlace: OptionPlace): FormularyFault[] {
  const { use, place } = optionPlace;
  const { byWeight = [], ...whole } = use.repeat?.cumulativeMaximum ?? {};
  return [whole, ...byWeight]
    .flatMap(({ perKg, total }) => [perKg, total])
    .flatMap((dose) =>
      unitsOf(optionPlace)
        .filter((unit) => dose !== undefined && !isConvertible(dose.unit, unit))
        .map((unit) => ({
          place,
          message: `cumulative maximum is in ${dose?.unit}, but the dose is in ${unit}`,
        })),
    );
}

/** Highest rate and concentration are compared with the dose. */
function givingUnits(optionPlace: OptionPlace): FormularyFault[] {
  const { use, option, place } = optionPlace;
  if (isRunning(option.rule)) return [];
  const { maximumRate, maximumConcentrationPerMl } = use.administration;
  const named: [string, Dose | undefined][] = [
    ["highest rate", maximumRate?.amount],
    ["flat highest rate", maximumRate?.maximum],
    ["highest concentration", maximumConcentrationPerMl],
  ];
  const mismatched = named.flatMap(([name, dose]) =>
    unitsOf(optionPlace)
      .filter((unit) => dose !== undefined && !isConvertible(dose.unit, unit))
      .map((unit) => ({ place, message: `${name} is in ${dose?.unit}, but the dose is in ${unit}` })),
  );
  const hasTwoFlat = maximumRate?.maximum !== undefined && !maximumRate.perKg;
  return [
    ...mismatched,
    ...(hasTwoFlat ? [{ place, message: "has two highest rates, neither of them per kg" }] : []),
  ];
}
