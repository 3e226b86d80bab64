import type { EstimatedChild, SiteProfile } from "@steelyard/core/body";
import { weighChild } from "@steelyard/core/body";
import { type CombinedReadings, combineReadings, type RepeatedField } from "@steelyard/core/entry";
import { centimetres, millimetres } from "@steelyard/core/units";
import type { Reading } from "./reading-code.ts";

/** One measurement read by two people. */
interface ComparedReading {
  readonly field: RepeatedField;
  readonly first: number;
  readonly second: number;
  /** In mm, whatever the unit of the field. */
  readonly apartMm: number;
  readonly combined: CombinedReadings;
}

export interface Comparison {
  readonly readings: readonly ComparedReading[];
  /** The weight by the first and by the second reading, kg; absent where one of them gives none, or a scale gave it. */
  readonly weight?: {
    readonly firstKg: number;
    readonly secondKg: number;
    readonly apartKg: number;
    /** % of the first. */
    readonly apartPercent: number;
  };
  readonly needsThird: boolean;
}

/** The first reading beside the second, in mm and in the kilograms that follow from each; all else of the child is the same. */
export function compareReadings(child: EstimatedChild, second: Reading, site?: SiteProfile): Comparison {
  const { lengthCm, armMm } = child.measurements;
  const readings = [
    ...compare("lengthCm", lengthCm, second.lengthCm),
    ...compare("armMm", armMm, second.armMm),
  ];
  const other = weighChild({
    measurements: {
      ...child.measurements,
      lengthCm: centimetres(second.lengthCm),
      ...(second.armMm !== undefined && { armMm: millimetres(second.armMm) }),
    },
    ...(site && { site }),
  });
  const firstKg = child.estimate.totalKg;
  const secondKg = other.ok ? other.value.estimate.totalKg : undefined;
  const isEstimated = child.estimate.components.length > 0;
  return {
    readings,
    ...(secondKg !== undefined &&
      isEstimated && {
        weight: {
          firstKg,
          secondKg,
          apartKg: Math.round(Math.abs(secondKg - firstKg) * 100) / 100,
          apartPercent: Math.round((1000 * Math.abs(secondKg - firstKg)) / firstKg) / 10,
        },
      }),
    needsThird: readings.some(({ combined }) => combined.needsThird),
  };
}

function compare(
  field: RepeatedField,
  first: number | undefined,
  second: number | undefined,
): readonly ComparedReading[] {
  if (first === undefined || second === undefined) return [];
  const combined = combineReadings({ field, readings: [first, second] });
  const apartMm = Math.round(combined.spread * (field === "lengthCm" ? 10 : 1) * 10) / 10;
  return [{ field, first, second, apartMm, combined }];
}
