import { err, ok, type Result } from "../result.ts";
import {
  add,
  compare,
  exactly,
  fraction,
  multiply,
  type Rational,
  roundToMultiple,
  subtract,
  toNumber,
} from "../units/rational.ts";
import type { ChildFacts } from "./child-facts.ts";
import type { DosingWarning, Unavailable } from "./dosing-warning.ts";
import type { Basis } from "./weights.ts";
import type { WorkingStep } from "./working-step.ts";

export interface ChosenBasis {
  readonly basis: Basis;
  readonly kg: Rational;
  readonly steps: readonly WorkingStep[];
  readonly warnings: readonly DosingWarning[];
}

/**
 * The weight a rule multiplies: the one it asks for, or total weight for a child lighter than its ideal weight.
 *
 * A weight that is not known is never replaced by another.
 *
 * @source ijem-2017-weight-review
 */
export function chooseBasis(
  asked: Basis,
  child: ChildFacts,
  { shareOfExcess }: { readonly shareOfExcess?: number } = {},
): Result<ChosenBasis, Unavailable> {
  const { total, ideal } = child.kgByBasis;
  const hasOwnShare = asked === "adjusted" && shareOfExcess !== undefined;
  if (hasOwnShare && ideal === undefined) return err({ type: "weight-missing", basis: "ideal" });
  const own = hasOwnShare && ideal ? adjusted({ total, ideal, share: shareOfExcess }) : undefined;
  const kg = own ? own.kg : child.kgByBasis[asked];
  if (kg === undefined) return err({ type: "weight-missing", basis: asked });
  if (asked === "total" || ideal === undefined || compare(total, ideal) >= 0) {
    return ok({ basis: asked, kg, steps: own?.steps ?? [], warnings: [] });
  }
  const fromKg = toNumber(kg);
  const totalKg = toNumber(total);
  return ok({
    basis: "total",
    kg: total,
    steps: [{ step: "basis-swapped", from: asked, fromKg, to: "total", toKg: totalKg }],
    warnings: [{ type: "basis-swapped", from: asked, fromKg, totalKg }],
  });
}

/** Ideal + share x (total - ideal), written to 0.1 kg as every weight that is not read from a scale. */
function adjusted({
  total,
  ideal,
  share,
}: {
  readonly total: Rational;
  readonly ideal: Rational;
  readonly share: number;
}): Pick<ChosenBasis, "kg" | "steps"> {
  const exactKg = add(ideal, multiply(exactly(share), subtract(total, ideal)));
  const kg = roundToMultiple(exactKg, fraction(1, 10));
  const [idealKg, totalKg] = [toNumber(ideal), toNumber(total)];
  return { kg, steps: [{ step: "adjusted-weight", idealKg, share, totalKg, kg: toNumber(kg) }] };
}
