import {
  type EstimatedChild,
  type NextMeasurement,
  nextMeasurements,
  type StoredSiteProfile,
} from "@steelyard/core/body";
import { type ChildReport, computeReport as computeSheets } from "@steelyard/core/child";
import type { Formulary, ProblemId, SheetLine } from "@steelyard/core/dosing";
import { draftFormulary } from "@steelyard/formulary";
import type { NextHint } from "../state/next-hint.ts";
import { versions } from "../state/versions.ts";

/** What follows from a weight, computed when it is asked for. */
export interface Report {
  /** The doses for one problem. A key press has to fill the sheet within a blink, so folded problems stay uncomputed. */
  readonly linesOf: (problem: ProblemId) => readonly SheetLine[];
  readonly lookups: () => Pick<ChildReport, "equipment" | "signs">;
  /** What one more measurement would buy, where that is a percentage point at least; the best first. */
  readonly next: NextHint | undefined;
}

/** Sheets of a child that has its weight already, of `site` where it was calibrated; `choices` holds other published doses by id of the line. */
export function computeReport({
  child,
  choices = {},
  site,
  formulary = draftFormulary,
  burnPercent,
}: {
  readonly child: EstimatedChild;
  readonly choices?: Readonly<Record<string, string>>;
  readonly site?: StoredSiteProfile | undefined;
  /** The draft of the page where the site has none of its own. */
  readonly formulary?: Formulary | undefined;
  /** The burnt share of the body surface, %. */
  readonly burnPercent?: number | undefined;
}): Report {
  const own = site && { site };
  const burn = burnPercent !== undefined && { burnPercent };
  const linesByProblem = new Map<ProblemId, readonly SheetLine[]>();
  let lookups: Pick<ChildReport, "equipment" | "signs"> | undefined;
  // A weight from a scale leaves nothing to settle.
  const settles = child.estimate.components.length === 0 ? [] : nextMeasurements(child.measurements, own);
  const sheet = (part: Formulary): ChildReport =>
    computeSheets({
      child,
      formulary: part,
      choices,
      settles,
      versions: { software: versions.software },
      ...own,
      ...burn,
    });
  return {
    linesOf: (problem) => {
      const known = linesByProblem.get(problem);
      if (known !== undefined) return known;
      const lines = sheet(formularyFor(formulary, problem)).sheet;
      linesByProblem.set(problem, lines);
      return lines;
    },
    lookups: () => {
      lookups ??= sheet(noMedicines);
      return lookups;
    },
    next: bestOf(settles, child),
  };
}

const noMedicines: Formulary = { ...draftFormulary, medicines: [] };

function bestOf([best]: readonly NextMeasurement[], { estimate }: EstimatedChild): NextHint | undefined {
  if (best === undefined) return undefined;
  const now = Math.round((50 * (estimate.high95Kg - estimate.low95Kg)) / estimate.totalKg);
  const percent = Math.round(best.halfWidthPercent);
  return percent < now ? { field: best.measurement, percent } : undefined;
}

/** By formulary, then by problem. */
const partsOfFormulary = new WeakMap<Formulary, Map<ProblemId, Formulary>>();

/** The uses for one problem, as a formulary: the same object every time, so that it is prepared only once. */
function formularyFor(whole: Formulary, problem: ProblemId): Formulary {
  const parts = partsOfFormulary.get(whole) ?? new Map<ProblemId, Formulary>();
  partsOfFormulary.set(whole, parts);
  const known = parts.get(problem);
  if (known !== undefined) return known;
  const medicines = whole.medicines
    .map((medicine) => ({ ...medicine, uses: medicine.uses.filter((use) => use.problem === problem) }))
    .filter(({ uses }) => uses.length > 0);
  const formulary = { ...whole, medicines };
  parts.set(problem, formulary);
  return formulary;
}
