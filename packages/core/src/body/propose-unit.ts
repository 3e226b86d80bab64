import type { UnitSlip } from "./weight-estimate.ts";

/** Factors to the unit that was asked for. The inch is 2.54 cm exactly. */
const toCentimetres = { m: 100, mm: 0.1, in: 2.54 } as const;
const toMillimetres = { cm: 10, m: 1000, in: 25.4 } as const;

/**
 * The unit in which a number that cannot be right would make sense, if there is exactly one.
 *
 * Two that would both make sense are no proposal: choosing between them is the reader's business.
 */
export function proposeUnit({
  value,
  unit,
  low,
  high,
}: {
  value: number;
  unit: "cm" | "mm";
  low: number;
  high: number;
}): UnitSlip | undefined {
  const factors: Readonly<Record<string, number>> = unit === "cm" ? toCentimetres : toMillimetres;
  const fitting = Object.entries(factors)
    .map(([from, factor]) => ({
      from: from as UnitSlip["from"],
      // To a millionth: 19 x 2.54 is 48.26 and not 48.260000000000005.
      value: Math.round(value * factor * 1e6) / 1e6,
    }))
    .filter((slip) => slip.value >= low && slip.value <= high);
  return fitting.length === 1 ? fitting[0] : undefined;
}
