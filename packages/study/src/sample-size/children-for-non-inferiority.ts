import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";

/**
 * Children needed to show, in the same children, that one method's share within a limit is not lower than another's by more than a
 * margin.
 *
 * n = (z_alpha + z_power)^2 (d - diff^2) / (diff + margin)^2 with d the share of children on whom the methods differ: the large-sample formula
 * of a paired difference. `powerByModel` and simulation show what it leaves out in small studies.
 *
 * `discordant`: share of children within the limit by one method only, in (0, 1], at least |difference|; `difference`: expected first
 * minus second; `margin`: above -difference; otherwise a `RangeError`. `alpha`: 0.025 one-sided, `power`: 0.8 when absent.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { childrenForNonInferiority } from "@steelyard/study/sample-size";
 *
 * assert.equal(childrenForNonInferiority({ discordant: 0.2, difference: 0, margin: 0.05 }), 628);
 * ```
 *
 * @source liu2002
 */
export function childrenForNonInferiority({
  discordant,
  difference,
  margin,
  alpha = 0.025,
  power = 0.8,
}: {
  readonly discordant: number;
  readonly difference: number;
  readonly margin: number;
  readonly alpha?: number;
  readonly power?: number;
}): number {
  if (!(discordant > 0 && discordant <= 1 && discordant >= Math.abs(difference)))
    throw new RangeError(
      `Cannot compute children as discordant must be in (0, 1] and at least |difference|: current value is ${discordant}`,
    );
  if (!(margin > 0 && margin + difference > 0))
    throw new RangeError(
      `Cannot compute children as margin must be above 0 and above -difference: current value is ${margin}`,
    );
  const z = normalQuantile(1 - alpha, 0, 1) + normalQuantile(power, 0, 1);
  return Math.max(2, Math.ceil((z * z * (discordant - difference ** 2)) / (difference + margin) ** 2));
}
