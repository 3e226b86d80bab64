import type { Formulary } from "@steelyard/core/dosing";
import type { FormularyFault } from "../formulary-fault.ts";

/** Two signatures are of two people: one name in one role twice is one pair of eyes. */
export function checkSignOff({ signOff }: Formulary): FormularyFault[] {
  const second = signOff?.second;
  if (signOff === undefined || second === undefined) return [];
  const isOne = same(second.name, signOff.name) && same(second.role, signOff.role);
  return isOne ? [{ place: "sign-off", message: `${second.name} cannot be both reviewers` }] : [];
}

function same(one: string, other: string): boolean {
  return one.trim().toLowerCase() === other.trim().toLowerCase();
}
