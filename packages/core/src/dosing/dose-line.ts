import { ok, type Result } from "../result.ts";
import { compare, exactly, fraction, multiply, type Rational, toNumber } from "../units/rational.ts";
import type { ChildFacts } from "./child-facts.ts";
import type { DosingWarning, Unavailable } from "./dosing-warning.ts";
import { fluidPortions } from "./fluid-portions.ts";
import type { Administration } from "./formulary.ts";
import { type GivenDose, givenDose } from "./given-dose.ts";
import { givingLimits } from "./giving-limits.ts";
import { limitedDose } from "./limited-dose.ts";
import type { LineTask } from "./line-task.ts";
import { measureVolume } from "./measure-volume.ts";
import { resolveRule } from "./resolve-rule.ts";
import { doseRobustness, isOutsideAccepted, ROBUST_BELOW } from "./robustness.ts";
import type { AcceptedRange, SimpleRule } from "./rule.ts";
import type { DoseLine, FurtherDose } from "./sheet-line.ts";
import type { Syringe } from "./syringes.ts";
import type { WorkingStep } from "./working-step.ts";
import type { Writable } from "./writable.ts";

export interface DoseLineTask extends LineTask {
  /** The rule for this child, bands resolved. */
  readonly rule: SimpleRule;
  readonly steps: readonly WorkingStep[];
  readonly warnings: readonly DosingWarning[];
}

/** A dose that is given at once. */
export function doseLine(task: DoseLineTask): Result<DoseLine, Unavailable> {
  const { head, rule, child, means, option, use } = task;
  const first = givenDose(rule, child, means);
  if (!first.ok) return first;
  const { limited, dose, volume, puffs, equivalents, drawnFrom, warnings, given } = first.value;
  const accepted = acceptedFor(rule, child);
  const robustness = doseRobustness({ given, limited, accepted, child });
  const addedTo = addition(use.administration, child, means.syringes);
  const giving = givingLimits({ given, limited, administration: use.administration, volume, addedTo });
  const working = [...task.steps, ...first.value.working];
  if (addedTo) working.push({ step: "added-to", ...addedTo });
  working.push(...giving.steps);
  const { portions } = use.administration;
  const parts = portions && limited.unit === "mL" ? fluidPortions(given, portions) : undefined;
  if (parts) working.push(...parts.steps);
  const line: Writable<DoseLine> = {
    ...head,
    basis: limited.basis,
    basisKg: toNumber(limited.kg),
    dose,
    further: (option.further ?? []).flatMap((next) => furtherDose(givenDose(next, child, means, drawnFrom))),
    working,
    warnings: [
      ...task.warnings,
      ...warnings,
      ...giving.warnings,
      ...basesDiffer(rule, child),
      ...notRobust(robustness),
      ...outsideAccepted(first.value, accepted),
    ],
  };
  // One by one: a spread for each of these costs as much as the arithmetic of the line.
  if (limited.of !== undefined) line.of = limited.of;
  if (volume) line.volume = volume;
  if (puffs) line.puffs = puffs;
  if (equivalents) line.equivalents = equivalents;
  if (giving.limits) line.giving = giving.limits;
  if (addedTo) line.addedTo = addedTo;
  if (parts) line.portions = parts.portions;
  if (limited.limitedBy) line.limitedBy = limited.limitedBy;
  if ("robustness" in robustness) line.robustness = robustness.robustness;
  else line.robustnessOmitted = robustness.robustnessOmitted;
  return ok(line);
}

/** Of a rule for each percent burnt, the range for this burn. */
function acceptedFor(rule: SimpleRule, { burnPercent }: ChildFacts): AcceptedRange | undefined {
  if (rule.kind === "per-m2" || rule.accepted === undefined) return undefined;
  if (rule.kind === "fixed" || rule.perBurnPercent === undefined || burnPercent === undefined) {
    return rule.accepted;
  }
  const times = (perKg: number): number => toNumber(multiply(exactly(perKg), burnPercent));
  const { lowPerKg, highPerKg, citations } = rule.accepted;
  return { lowPerKg: times(lowPerKg), highPerKg: times(highPerKg), citations };
}

/** A later dose needs the same facts as the first, which were there. */
function furtherDose(next: Result<GivenDose, Unavailable>): FurtherDose[] {
  if (!next.ok) return [];
  const { dose, volume, puffs, limited, working, warnings } = next.value;
  return [
    {
      dose,
      ...(volume && { volume }),
      ...(puffs && { puffs }),
      ...(limited.limitedBy && { limitedBy: limited.limitedBy }),
      working,
      warnings,
    },
  ];
}

/** Where the dose on total and on ideal weight, each after its limits, differ by more than a fifth of the smaller. */
function basesDiffer(rule: SimpleRule, child: ChildFacts): DosingWarning[] {
  const { total: totalKg, ideal: idealKg } = child.kgByBasis;
  if (rule.kind !== "per-kg" || idealKg === undefined) return [];
  // Limits only bring the two doses nearer, so weights this near settle it.
  if (!isFifthApart(totalKg, idealKg)) return [];
  const total = limitedDose({ ...rule, basis: "total" }, child);
  const ideal = limitedDose({ ...rule, basis: "total" }, onIdealWeight(child));
  if (!total.ok || !ideal.ok) return [];
  const [a, b] = [total.value.amount, ideal.value.amount];
  if (!isFifthApart(a, b)) return [];
  const { unit } = rule;
  return [
    {
      type: "bases-differ",
      totalDose: { amount: toNumber(a), unit },
      idealDose: { amount: toNumber(b), unit },
    },
  ];
}

/** Whether the larger is more than a fifth above the smaller. */
function isFifthApart(a: Rational, b: Rational): boolean {
  const [smaller, larger] = compare(a, b) < 0 ? [a, b] : [b, a];
  return compare(larger, multiply(smaller, fraction(6, 5))) > 0;
}

function onIdealWeight(child: ChildFacts): ChildFacts {
  const { ideal, total } = child.kgByBasis;
  return { ...child, kgByBasis: { total: ideal ?? total } };
}

function notRobust(robustness: ReturnType<typeof doseRobustness>): DosingWarning[] {
  if (!("robustness" in robustness)) return [];
  const { probabilityOutside, settledBy } = robustness.robustness;
  if (probabilityOutside <= ROBUST_BELOW) return [];
  return [{ type: "not-robust", probabilityOutside, ...(settledBy && { settledBy }) }];
}

function outsideAccepted(
  { limited, given }: GivenDose,
  accepted: AcceptedRange | undefined,
): DosingWarning[] {
  if (accepted === undefined || !isOutsideAccepted({ given, limited, accepted })) return [];
  const amount = toNumber(given) / toNumber(limited.kg);
  return [{ type: "outside-accepted-range", dosePerKg: { amount, unit: limited.unit, per: "kg" } }];
}

/** The fluid the dose is added to, where the formulary names one and what it depends on is known. */
function addition(
  { dilution }: Administration,
  child: ChildFacts,
  syringes: readonly Syringe[],
): { ml: number; diluent: string } | undefined {
  if (dilution === undefined) return undefined;
  const resolved = resolveRule(dilution.volume, child);
  if (!resolved.ok) return undefined;
  const limited = limitedDose(resolved.value.rule, child);
  if (!limited.ok) return undefined;
  const { amount, maximum } = limited.value;
  const { ml } = measureVolume({ exactMl: amount, maximumMl: maximum, syringes });
  return { ml: toNumber(ml), diluent: dilution.diluent };
}
