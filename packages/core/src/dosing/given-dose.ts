import { ok, type Result } from "../result.ts";
import type { Dose } from "../units/index.ts";
import { type Rational, toNumber } from "../units/rational.ts";
import type { ChildFacts } from "./child-facts.ts";
import { deliver, type Means } from "./deliver.ts";
import type { DosingWarning, Unavailable } from "./dosing-warning.ts";
import type { DrawnFrom } from "./draw-up.ts";
import { type LimitedDose, limitedDose } from "./limited-dose.ts";
import type { SimpleRule } from "./rule.ts";
import type { CountedPuffs, DoseEquivalent, DrawnVolume } from "./sheet-line.ts";
import type { WorkingStep } from "./working-step.ts";
import type { Writable } from "./writable.ts";

/** A dose from its rule to the syringe: what was asked for, and what is given. */
export interface GivenDose {
  readonly limited: LimitedDose;
  readonly given: Rational;
  readonly dose: Dose;
  readonly volume?: DrawnVolume;
  readonly puffs?: CountedPuffs;
  readonly equivalents?: readonly DoseEquivalent[];
  readonly drawnFrom?: DrawnFrom;
  readonly working: readonly WorkingStep[];
  readonly warnings: readonly DosingWarning[];
}

/** `earlier`: what the dose before was drawn from. */
export function givenDose(
  rule: SimpleRule,
  child: ChildFacts,
  means: Means,
  earlier?: DrawnFrom,
): Result<GivenDose, Unavailable> {
  const limited = limitedDose(rule, child);
  if (!limited.ok) return limited;
  const { amount, volume, puffs, equivalents, drawnFrom, steps, warnings } = deliver(
    limited.value,
    means,
    earlier,
  );
  const result: Writable<GivenDose> = {
    limited: limited.value,
    given: amount,
    dose: { amount: toNumber(amount), unit: limited.value.unit },
    working: [...limited.value.steps, ...steps],
    warnings: [...limited.value.warnings, ...warnings],
  };
  if (volume) result.volume = volume;
  if (puffs) result.puffs = puffs;
  if (equivalents) result.equivalents = equivalents;
  if (drawnFrom) result.drawnFrom = drawnFrom;
  return ok(result);
}
