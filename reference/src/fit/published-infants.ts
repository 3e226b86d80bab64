import { valueAtZ, who2006WeightForLength } from "@steelyard/core/growth";
import { centimetres } from "@steelyard/core/units";
import type { FitChild } from "./fit-child.ts";

/** NHANES has no arm under 2 months and hardly a child under 57 cm; the LIFE infants thin out below this length. */
const belowCm = 50;
const fromCm = 45;
const stepCm = 0.5;
/** Ten children of equal probability at each length: the middles of the tenths of a normal. */
const z = [-1.645, -1.036, -0.674, -0.385, -0.126, 0.126, 0.385, 0.674, 1.036, 1.645];
/** They are a published curve and not children: together they count as ten. */
const weight = 0.05;

/**
 * Stand-ins for the WHO 2006 weight-for-length standard at the shortest lengths: weights only, no arms. They hold the weight
 * curve where the surveys have few children, and give way where these have many.
 *
 * @source who-growth-2006
 */
export function publishedInfants(): readonly FitChild[] {
  const lengths = Array.from({ length: (belowCm - fromCm) / stepCm }, (_, i) => fromCm + i * stepCm);
  return (["m", "f"] as const).flatMap((sex) =>
    lengths.flatMap((lengthCm) =>
      z.map((own): FitChild => {
        const at = centimetres(lengthCm);
        const value = valueAtZ({ standard: who2006WeightForLength, sex, at, z: own });
        if (!value.ok) throw new Error(`Cannot read the WHO weight at ${lengthCm} cm: ${value.error.type}`);
        return { source: "WHO 2006", childId: 0, sex, lengthCm, weightKg: value.value, weight };
      }),
    ),
  );
}
