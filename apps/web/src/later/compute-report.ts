import { type NextMeasurement, nextMeasurements } from "@steelyard/core/body";
import { type ChildReport, computeChild } from "@steelyard/core/child";
import type { Formulary, ProblemId, SheetLine } from "@steelyard/core/dosing";
import { draftFormulary } from "@steelyard/formulary";
import type { WeighedChild } from "../state/read-bedside.ts";
import { versions } from "../state/versions.ts";

/** What follows from a weight, computed when it is asked for. */
export interface Report {
  /** The doses for one problem. A key press has to fill the sheet within a blink, so folded problems stay uncomputed. */
  readonly linesOf: (problem: ProblemId) => readonly SheetLine[];
  readonly lookups: () => Pick<ChildReport, "equipment" | "signs">;
}

export function computeReport({ measurements }: Pick<WeighedChild, "measurements">): Report {
  const linesByProblem = new Map<ProblemId, readonly SheetLine[]>();
  let lookups: Pick<ChildReport, "equipment" | "signs"> | undefined;
  return {
    linesOf: (problem) => {
      const known = linesByProblem.get(problem);
      if (known !== undefined) return known;
      const lines = childFor({ measurements, formulary: formularyFor(problem) }).sheet;
      linesByProblem.set(problem, lines);
      return lines;
    },
    lookups: () => {
      lookups ??= childFor({ measurements, formulary: noMedicines });
      return lookups;
    },
  };
}

const noMedicines: Formulary = { ...draftFormulary, medicines: [] };

function childFor({
  measurements,
  formulary,
}: Pick<WeighedChild, "measurements"> & { readonly formulary: Formulary }): ChildReport {
  const { software } = versions;
  const child = computeChild({ measurements, formulary, versions: { software } });
  if (child.ok) return child.value;
  throw new RangeError(
    `Cannot compute a sheet as the child must have a weight: current issue is ${child.error.type}`,
  );
}

/** A further girth and what it would make of the 95 % range. */
export interface NextHint {
  readonly field: NextMeasurement["measurement"];
  /** Half the range, % of the weight. */
  readonly percent: number;
}

const formularyByProblem = new Map<ProblemId, Formulary>();

/** The uses for one problem, as a formulary: the same object every time, so that it is prepared only once. */
function formularyFor(problem: ProblemId): Formulary {
  const known = formularyByProblem.get(problem);
  if (known !== undefined) return known;
  const medicines = draftFormulary.medicines
    .map((medicine) => ({ ...medicine, uses: medicine.uses.filter((use) => use.problem === problem) }))
    .filter(({ uses }) => uses.length > 0);
  const formulary = { ...draftFormulary, medicines };
  formularyByProblem.set(problem, formulary);
  return formulary;
}

/** What one more measurement would buy, where that is a percentage point at least; the best first. */
export function bestNextMeasurement({
  measurements,
  estimate,
}: Pick<WeighedChild, "measurements" | "estimate">): NextHint | undefined {
  if (estimate.components.length === 0) return undefined;
  const [best] = nextMeasurements(measurements);
  if (best === undefined) return undefined;
  const now = Math.round((50 * (estimate.high95Kg - estimate.low95Kg)) / estimate.totalKg);
  const percent = Math.round(best.halfWidthPercent);
  return percent < now ? { field: best.measurement, percent } : undefined;
}
