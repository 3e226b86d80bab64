import type { CaseEvent } from "../case/case-event.ts";
import { foldCase } from "../case/fold-case.ts";
import type { CaseSummaryRow } from "./tables.ts";

/** What a list of the department shows of a case, by the same fold as everywhere. */
export function summaryRow(
  events: readonly CaseEvent[],
  { site, touchedAt }: { readonly site: string; readonly touchedAt: string },
): CaseSummaryRow {
  const record = foldCase(events);
  const { caseId, code, startedAt, closedAt, deletedAt, measurement, laterWeight, versions } = record;
  const estimate = record.estimate?.estimate;
  const at = (belongs: boolean): string | null => (deletedAt === undefined && belongs ? startedAt : null);
  const isEstimated = estimate !== undefined;
  // Weighed at the bedside: the estimate rests on that scale, and nobody needs to weigh the child for it.
  const isWeighedAtOnce = measurement?.measurements.scaleKg !== undefined;
  return {
    site,
    case_id: caseId,
    code,
    started_at: startedAt,
    listed_at: at(true),
    open_at: at(closedAt === undefined),
    due_at: at(isEstimated && laterWeight === undefined && !isWeighedAtOnce),
    weighed_at: at(isEstimated && laterWeight !== undefined),
    closed_at: closedAt ?? null,
    estimate_kg: estimate?.totalKg ?? null,
    low95_kg: estimate?.low95Kg ?? null,
    high95_kg: estimate?.high95Kg ?? null,
    ideal_kg: estimate?.idealKg ?? null,
    later_kg: laterWeight?.kg ?? null,
    later_on: laterWeight?.on ?? null,
    doses: record.doses.length,
    model: versions.model,
    formulary: versions.formulary,
    calibration: versions.calibration ?? null,
    touched_at: touchedAt,
  };
}
