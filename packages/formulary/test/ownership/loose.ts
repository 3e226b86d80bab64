import type { Formulary } from "@steelyard/core/dosing";
import { draftFormulary } from "@steelyard/formulary";

// biome-ignore lint/suspicious/noExplicitAny: edits go to places that the types would not let one reach
export type Loose = any;

/** A copy of the draft after an edit. */
export function edited(edit: (formulary: Loose) => void): Formulary {
  const formulary = structuredClone(draftFormulary) as Loose;
  edit(formulary);
  return formulary;
}

export function useOf(formulary: Loose, medicineId: string, useId: string): Loose {
  return formulary.medicines
    .find(({ id }: { id: string }) => id === medicineId)
    .uses.find(({ id }: { id: string }) => id === useId);
}

export function medicineOf(formulary: Loose, medicineId: string): Loose {
  return formulary.medicines.find(({ id }: { id: string }) => id === medicineId);
}
