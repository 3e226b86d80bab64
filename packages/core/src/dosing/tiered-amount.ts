import { add, compare, exactly, multiply, type Rational, subtract } from "../units/rational.ts";
import type { WeightTier } from "./rule.ts";

const NOTHING: Rational = { numerator: 0, denominator: 1 };

export interface TierPart {
  /** Kilograms that fall in the tier. */
  readonly kg: Rational;
  readonly perKg: number;
  readonly amount: Rational;
}

/** What each tier gives for its own share of the weight, and the sum of all, exactly. */
export function tieredAmount({
  kg,
  tiers,
}: {
  readonly kg: Rational;
  readonly tiers: readonly WeightTier[];
}): {
  readonly parts: readonly TierPart[];
  readonly sum: Rational;
} {
  const parts: TierPart[] = [];
  let counted = NOTHING;
  let sum = NOTHING;
  for (const { upToKg, perKg } of tiers) {
    const edge = upToKg === undefined || compare(kg, exactly(upToKg)) < 0 ? kg : exactly(upToKg);
    const own = subtract(edge, counted);
    if (own.numerator <= 0) break;
    const amount = multiply(own, exactly(perKg));
    parts.push({ kg: own, perKg, amount });
    counted = edge;
    sum = add(sum, amount);
  }
  return { parts, sum };
}
