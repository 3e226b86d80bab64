import type { Formulary } from "@steelyard/core/dosing";
import type { FormularyFault } from "../formulary-fault.ts";
import { duplicates, everyUse } from "./place.ts";

/** Names that must be unique, and names that must lead somewhere. */
export function checkReferences(formulary: Formulary): FormularyFault[] {
  return [
    ...duplicates(
      formulary.medicines.map(({ id }) => id),
      "formulary",
      "medicine",
    ),
    ...duplicates(
      formulary.medicines.map(({ name }) => name.toLowerCase()),
      "formulary",
      "medicine name",
    ),
    ...duplicates(
      formulary.sources.map(({ id }) => id),
      "formulary",
      "source",
    ),
    ...formulary.medicines.flatMap(({ id, strengths, uses }) => [
      ...duplicates(
        uses.map(({ title, routes }) => `${title}, ${routes.join(" or ")}`),
        id,
        "the use",
      ),
      ...duplicates(
        strengths.map((strength) => strength.id),
        id,
        "strength",
      ),
      ...duplicates(
        uses.map((use) => use.id),
        id,
        "use",
      ),
    ]),
    ...everyUse(formulary).flatMap(({ medicine, use, place }) => [
      ...duplicates(
        use.options.map(({ id }) => id),
        place,
        "option",
      ),
      ...duplicates(
        (use.preparations ?? []).map(({ id }) => id),
        place,
        "preparation",
      ),
      ...use.strengths
        .filter((id) => !medicine.strengths.some((strength) => strength.id === id))
        .map((id) => ({ place, message: `strength ${id} is not a strength of ${medicine.id}` })),
      ...(use.options.some(({ id }) => id === use.defaultOption)
        ? []
        : [{ place, message: `default option ${use.defaultOption} is not one of its options` }]),
      ...(use.options.length > 1 && use.defaultReason === undefined
        ? [{ place, message: "has more than one option but no reason for the default" }]
        : []),
    ]),
  ];
}
