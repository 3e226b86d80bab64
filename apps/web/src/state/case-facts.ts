import type { EstimatedChild } from "@steelyard/core/body";
import type { CaseEventDraft, CaseMeasurements } from "@steelyard/records/case";

/** A weighed child as the two events that a case keeps of it. */
export function measured({ measurements, estimate, weights }: EstimatedChild): readonly CaseEventDraft[] {
  const known = Object.fromEntries(Object.entries(measurements).filter(([, value]) => value !== undefined));
  const { totalKg, low95Kg, high95Kg, rests } = estimate;
  const { idealKg } = weights;
  return [
    { type: "measurement", measurements: known as CaseMeasurements },
    {
      type: "estimate",
      estimate: { totalKg, low95Kg, high95Kg, ...(idealKg !== undefined && { idealKg }), rests },
    },
  ];
}
