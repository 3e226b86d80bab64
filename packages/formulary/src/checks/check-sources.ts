import type { Citation, Formulary } from "@steelyard/core/dosing";
import type { FormularyFault } from "../formulary-fault.ts";

/** Every citation leads to a source that is there, and claims no more than the source allows. */
export function checkSources(formulary: Formulary): FormularyFault[] {
  const sourceById = new Map(formulary.sources.map((source) => [source.id, source]));
  const cited = new Set<string>();
  const faults = formulary.medicines.flatMap((medicine) =>
    citationsIn(medicine, medicine.id).flatMap(({ citation, place }): FormularyFault[] => {
      cited.add(citation.sourceId);
      const source = sourceById.get(citation.sourceId);
      if (source === undefined) {
        return [{ place, message: `source ${citation.sourceId} is not in the list of sources` }];
      }
      return citation.verification === "read" && source.verification !== "read"
        ? [
            {
              place,
              message: `is marked as read in ${source.id}, which is itself known from ${source.verification} only`,
            },
          ]
        : [];
    }),
  );
  const unused = formulary.sources
    .filter(({ id }) => !cited.has(id))
    .map(({ id }) => ({ place: `source ${id}`, message: "is cited by nothing" }));
  return [...faults, ...unused];
}

/** Every citation below a value, with the nearest names above it. */
function citationsIn(value: unknown, place: string): { citation: Citation; place: string }[] {
  if (Array.isArray(value)) return value.flatMap((item) => citationsIn(item, place));
  if (typeof value !== "object" || value === null) return [];
  if ("sourceId" in value && "verification" in value) return [{ citation: value as Citation, place }];
  return Object.entries(value).flatMap(([key, child]) =>
    Array.isArray(child)
      ? child.flatMap((item) => citationsIn(item, placeOf(item, key, place)))
      : citationsIn(child, place),
  );
}

const NAMED: Readonly<Record<string, string>> = {
  uses: "use",
  options: "option",
  strengths: "strength",
  preparations: "preparation",
};

function placeOf(item: unknown, key: string, place: string): string {
  const kind = NAMED[key];
  if (kind === undefined || typeof item !== "object" || item === null || !("id" in item)) return place;
  return `${place}, ${kind} ${String(item.id)}`;
}
