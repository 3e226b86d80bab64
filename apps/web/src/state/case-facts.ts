import type { EstimatedChild } from "@steelyard/core/body";
import { readMeasurements } from "@steelyard/core/entry";
import type { CaseEventDraft, CaseMeasurements } from "@steelyard/records/case";
import type { BedsideState } from "./bedside-state.ts";

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

type SecondReading = Extract<CaseEventDraft, { type: "second-reading" }>;

/** What another person read, or the same person again; undefined while there is nothing that can be read. */
export function secondReading({ lengthCm2, armMm2 }: BedsideState["texts"]): SecondReading | undefined {
  const length = readMeasurements({ lengthCm: lengthCm2 });
  const arm = readMeasurements({ armMm: armMm2 });
  const lengthCm = length.ok ? length.value.measurements.lengthCm : undefined;
  const armMm = arm.ok ? arm.value.measurements.armMm : undefined;
  if (lengthCm === undefined && armMm === undefined) return undefined;
  return {
    type: "second-reading",
    ...(lengthCm !== undefined && { lengthCm }),
    ...(armMm !== undefined && { armMm }),
  };
}
