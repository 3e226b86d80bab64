import { checkApplicability } from "./applicability.ts";
import type { ChildFacts } from "./child-facts.ts";
import type { Means } from "./deliver.ts";
import { doseLine } from "./dose-line.ts";
import type { AgeChoice, DosingWarning, Unavailable } from "./dosing-warning.ts";
import { givenDose } from "./given-dose.ts";
import { infusionLine } from "./infusion-line.ts";
import type { LineHead } from "./line-head.ts";
import type { LineTask } from "./line-task.ts";
import { resolveInfusion, resolveRule } from "./resolve-rule.ts";
import { type AgeBandRule, type InfusionAgeBandRule, isRunning, type RunningRule } from "./rule.ts";
import type { SheetLine, UnavailableLine } from "./sheet-line.ts";
import type { WorkingStep } from "./working-step.ts";

/** One use for one child: a dose, or the reason why there is none. */
export function computeLine(task: LineTask): SheetLine {
  const { head, use, option, means, child } = task;
  const applicability = checkApplicability(use, child);
  if (applicability.unavailable) return withoutDose(head, applicability.unavailable, [], []);
  const { warnings } = applicability;
  if (isRunning(option.rule)) return runningLine(task, option.rule, warnings);
  const resolved = resolveRule(option.rule, child);
  if (!resolved.ok) {
    const { error } = resolved;
    const reason: Unavailable =
      error.type === "age-missing" && option.rule.kind === "age-bands"
        ? { type: "age-missing", choices: choicesByAge(option.rule, child, means) }
        : error;
    return withoutDose(head, reason, [], warnings);
  }
  const { rule, steps, warnings: ruleWarnings } = resolved.value;
  const before = [...warnings, ...ruleWarnings];
  const line = doseLine({ ...task, rule, steps, warnings: before });
  return line.ok ? line.value : withoutDose(head, line.error, steps, before);
}

function runningLine(task: LineTask, rule: RunningRule, warnings: readonly DosingWarning[]): SheetLine {
  const { head, child } = task;
  if (rule.kind !== "infusion-age-bands") {
    const line = infusionLine({ ...task, rule, steps: [], warnings });
    return line.ok ? line.value : withoutDose(head, line.error, [], warnings);
  }
  const resolved = resolveInfusion(rule, child);
  if (!resolved.ok) {
    const { error } = resolved;
    const reason: Unavailable =
      error.type === "age-missing" ? { type: "age-missing", choices: startsByAge(rule) } : error;
    return withoutDose(head, reason, [], warnings);
  }
  const { steps } = resolved.value;
  const before = [...warnings, ...resolved.value.warnings];
  const line = infusionLine({ ...task, rule: resolved.value.rule, steps, warnings: before });
  return line.ok ? line.value : withoutDose(head, line.error, steps, before);
}

/** Where the infusion starts in each band of age. */
function startsByAge({ bands }: InfusionAgeBandRule): AgeChoice[] {
  return bands.map(({ lowMonths, highMonths, rule: { startPerKg: amount, unit, per } }) => ({
    lowMonths,
    ...(highMonths !== undefined && { highMonths }),
    dose: { amount, unit, per: `kg/${per}` as const },
  }));
}

function withoutDose(
  head: LineHead,
  unavailable: Unavailable,
  working: readonly WorkingStep[],
  warnings: readonly DosingWarning[],
): UnavailableLine {
  return { ...head, unavailable, working, warnings };
}

/** What each band of age would give; a band whose own rule cannot be computed is left to the reader's formulary. */
function choicesByAge(rule: AgeBandRule, child: ChildFacts, means: Means): AgeChoice[] {
  return rule.bands.flatMap(({ lowMonths, highMonths, rule: bandRule }) => {
    const given = givenDose(bandRule, child, means);
    if (!given.ok) return [];
    const { dose, volume } = given.value;
    return [
      {
        lowMonths,
        ...(highMonths !== undefined && { highMonths }),
        dose,
        ...(volume && { volume }),
      },
    ];
  });
}
