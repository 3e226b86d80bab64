import type { Dose, DoseOption, Formulary, Medicine, Use } from "@steelyard/core/dosing";
import { formatQuantity } from "@steelyard/core/units";
import type { FormularyFault } from "../formulary-fault.ts";

/** One dose option with all it stands in. */
export interface OptionPlace {
  readonly formulary: Formulary;
  readonly medicine: Medicine;
  readonly use: Use;
  readonly option: DoseOption;
  readonly place: string;
}

export function everyUse(formulary: Formulary): { medicine: Medicine; use: Use; place: string }[] {
  return formulary.medicines.flatMap((medicine) =>
    medicine.uses.map((use) => ({ medicine, use, place: `${medicine.id}, use ${use.id}` })),
  );
}

export function everyOption(formulary: Formulary): OptionPlace[] {
  return everyUse(formulary).flatMap(({ medicine, use, place }) =>
    use.options.map((option) => ({
      formulary,
      medicine,
      use,
      option,
      place: use.options.length > 1 ? `${place}, option ${option.id}` : place,
    })),
  );
}

/** A quantity inside a message: with ordinary spaces, and in the unit it is written in. */
export function plain(dose: Dose): string {
  return formatQuantity(dose).replaceAll("\u00a0", " ");
}

/** Faults, one for each thing that is in the list more than once. */
export function duplicates(ids: readonly string[], place: string, what: string): FormularyFault[] {
  const repeated = new Set(ids.filter((id, index) => ids.indexOf(id) !== index));
  return [...repeated].map((id) => ({ place, message: `${what} ${id} occurs more than once` }));
}
