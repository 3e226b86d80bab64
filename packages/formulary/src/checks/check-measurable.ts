import { computeSheet, type Formulary, isInhaler, isRunning } from "@steelyard/core/dosing";
import { kilograms } from "@steelyard/core/units";
import type { FormularyFault } from "../formulary-fault.ts";
import { everyOption, type OptionPlace } from "./place.ts";

/** Children from newborn to grown; what none of them can be given from a strength, nobody can. @source common-practice */
const TRIAL_WEIGHTS_KG = [3, 5, 8, 12, 18, 26, 40, 60, 80] as const;

/** Strengths from which no syringe can measure the dose of any child, by the engine itself. */
export function checkMeasurable(formulary: Formulary): FormularyFault[] {
  return everyOption(formulary).flatMap((optionPlace) => {
    const { use, option, place } = optionPlace;
    if (isRunning(option.rule)) return [];
    return use.strengths
      .filter((strengthId) => isNeverMeasurable(optionPlace, strengthId))
      .map((strengthId) => ({
        place,
        message: `strength ${strengthId} gives no child ${isPuffs(optionPlace, strengthId) ? "a whole puff" : "a volume that a syringe can measure"}`,
      }));
  });
}

function isPuffs({ medicine }: OptionPlace, strengthId: string): boolean {
  return medicine.strengths.some((strength) => strength.id === strengthId && isInhaler(strength));
}

function isNeverMeasurable({ formulary, medicine, use, option }: OptionPlace, strengthId: string): boolean {
  const alone: Formulary = {
    ...formulary,
    medicines: [
      {
        ...medicine,
        uses: [{ ...use, options: [option], defaultOption: option.id, strengths: [strengthId], limits: [] }],
      },
    ],
  };
  const lines = TRIAL_WEIGHTS_KG.flatMap((kg) => {
    const weightKg = kilograms(kg);
    const weights = { totalKg: weightKg, idealKg: weightKg, adjustedKg: weightKg, leanKg: weightKg };
    return computeSheet({ formulary: alone, weights });
  }).filter((line) => !line.unavailable);
  return (
    lines.length > 0 &&
    lines.every(({ warnings }) =>
      warnings.some(({ type }) => type === "not-measurable" || type === "not-in-puffs"),
    )
  );
}
