import { err, ok, type Result } from "../result.ts";
import { compare, type Rational, toNumber } from "../units/rational.ts";
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
export function chooseBasis(asked: Basis, child: ChildFacts): Result<ChosenBasis, Unavailable> {
  const kg = child.kgByBasis[asked];
  if (kg === undefined) return err({ type: "weight-missing", basis: asked });
  const { total, ideal } = child.kgByBasis;
  if (asked === "total" || ideal === undefined || compare(total, ideal) >= 0) {
    return ok({ basis: asked, kg, steps: [], warnings: [] });
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
