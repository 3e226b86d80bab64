import type { Dose, DoseUnit, Formulary, Rule, SimpleRule } from "@steelyard/core/dosing";
import { isConvertible } from "@steelyard/core/units";
import type { FormularyFault } from "../formulary-fault.ts";
import { everyOption, type OptionPlace } from "./place.ts";
import { simpleRulesOf } from "./simple-rules-of.ts";

/** Every unit can be compared with those it meets: dose with limit, with strength, with what it is given as. */
export function checkUnits(formulary: Formulary): FormularyFault[] {
  return everyOption(formulary).flatMap((place) => [
    ...limitUnits(place),
    ...strengthUnits(place),
    ...kindUnits(place),
    ...cumulativeUnits(place),
  ]);
}

function unitsOf({ option }: OptionPlace): DoseUnit[] {
  const rules: readonly (Rule | SimpleRule)[] =
    option.rule.kind === "infusion"
      ? [option.rule]
      : [...simpleRulesOf(option.rule), ...(option.further ?? [])];
  return [...new Set(rules.flatMap((rule) => ("unit" in rule ? [rule.unit] : [])))];
}

function limitUnits({ option, place }: OptionPlace): FormularyFault[] {
  if (option.rule.kind === "infusion") return [];
  return [...simpleRulesOf(option.rule), ...(option.further ?? [])].flatMap((rule) => {
    if (rule.kind === "fixed") return [];
    const named: [string, Dose | undefined][] = [
      ["maximum", rule.maximum],
      ["minimum", rule.minimum],
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
    units
      .filter((unit) => unit !== "mL" && !isConvertible(strength.unit, unit))
      .map((unit) => ({
        place,
        message: `strength ${strength.id} is in ${strength.unit} per mL, but the dose is in ${unit}`,
      })),
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
  const isInfusion = option.rule.kind === "infusion";
  const needsStrength = !isInfusion && units.some((unit) => unit !== "mL" && unit !== "J");
  return [
    ...mismatched,
    ...unprepared,
    ...(needsStrength && use.strengths.length === 0
      ? [{ place, message: "has no strength, so no volume can be given" }]
      : []),
    ...(isInfusion && preparations.length === 0
      ? [{ place, message: "is an infusion, but nothing says how the syringe is made up" }]
      : []),
  ];
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
  const { perKg, total } = use.repeat?.cumulativeMaximum ?? {};
  return [perKg, total].flatMap((dose) =>
    unitsOf(optionPlace)
      .filter((unit) => dose !== undefined && !isConvertible(dose.unit, unit))
      .map((unit) => ({
        place,
        message: `cumulative maximum is in ${dose?.unit}, but the dose is in ${unit}`,
      })),
  );
}
