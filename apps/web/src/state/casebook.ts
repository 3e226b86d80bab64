import type { CaseRecord } from "@steelyard/records/case";

export type CaseFilter = "all" | "due" | "deleted";

/** Has an estimate, and no scale weight to judge it by. */
export function isWeightDue({ estimate, laterWeight, measurement, deletedAt }: CaseRecord): boolean {
  return (
    deletedAt === undefined &&
    estimate !== undefined &&
    laterWeight === undefined &&
    measurement?.measurements.scaleKg === undefined
  );
}

/** The cases that a filter and every word of a search leave. */
export function findCases(
  records: readonly CaseRecord[],
  { filter, search }: { readonly filter: CaseFilter; readonly search: string },
): readonly CaseRecord[] {
  const words = search
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
  return records.filter((record) => {
    if ((filter === "deleted") !== (record.deletedAt !== undefined)) return false;
    if (filter === "due" && !isWeightDue(record)) return false;
    const text = textOf(record);
    return words.every((word) => text.includes(word));
  });
}

function textOf({ code, startedAt, doses, notes, laterWeight }: CaseRecord): string {
  const given = doses.flatMap(({ given: { medicine, use } }) => [medicine, use]);
  const said = notes.map(({ text }) => text);
  return [code, startedAt.slice(0, 10), laterWeight?.on ?? "", ...given, ...said].join(" ").toLowerCase();
}

/** How far the estimate lies from the scale, percent of the scale weight. */
export function percentOff({ estimate, laterWeight }: CaseRecord): number | undefined {
  if (estimate === undefined || laterWeight === undefined) return undefined;
  return (100 * (estimate.estimate.totalKg - laterWeight.kg)) / laterWeight.kg;
}

export type WeightFault = "kg" | "day" | "unlikely";

/** What is wrong with a later weight as typed; `unlikely` may be kept all the same. */
export function weightFault(
  { startedAt, estimate }: CaseRecord,
  { kg, on, today }: { readonly kg: number | undefined; readonly on: string; readonly today: string },
): WeightFault | undefined {
  if (kg === undefined || kg < 0.2 || kg > 400) return "kg";
  // The day here may be one before or after that in Greenwich.
  const earliest = new Date(Date.parse(startedAt) - 24 * 60 * 60 * 1000).toISOString().slice(0, 10);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(on) || on < earliest || on > today) return "day";
  if (estimate === undefined) return undefined;
  const { low95Kg, high95Kg } = estimate.estimate;
  return kg < low95Kg || kg > high95Kg ? "unlikely" : undefined;
}
