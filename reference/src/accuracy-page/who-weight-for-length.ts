import {
  lengthToHeight,
  who2006WeightForHeight,
  who2006WeightForLength,
  zScore,
} from "@steelyard/core/growth";
import { centimetres, kilograms } from "@steelyard/core/units";

/** Weight for length is published to here, lying, cm: above it weight for height goes on. */
const lengthTableToCm = 110;
const heightTableToCm = 120;

/**
 * The z-score of a weight for the lying length, by the WHO 2006 standard; undefined where the standard ends (45 and 120.7 cm).
 *
 * @source who-growth-2006
 */
export function whoWeightForLengthZ(given: {
  sex: "m" | "f";
  lengthCm: number;
  weightKg: number;
}): number | undefined {
  const { sex, lengthCm } = given;
  const heightCm = lengthToHeight(centimetres(lengthCm));
  if (lengthCm < 45 || heightCm > heightTableToCm) return undefined;
  const table =
    lengthCm <= lengthTableToCm
      ? { standard: who2006WeightForLength, at: centimetres(lengthCm) }
      : { standard: who2006WeightForHeight, at: heightCm };
  const z = zScore({ ...table, sex, value: kilograms(given.weightKg) });
  return z.ok ? z.value : undefined;
}
