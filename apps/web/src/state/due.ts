import type { DoseLine, TrackedLine } from "@steelyard/core/dosing";
import type { CaseDose } from "@steelyard/records/case";

export type Due =
  | { readonly type: "in"; readonly seconds: number }
  | { readonly type: "now" }
  | { readonly type: "overdue"; readonly seconds: number };

/** Where a moment lies beside the time in which the next dose is due. */
export function dueAt(nextDue: NonNullable<TrackedLine["nextDue"]>, nowMinutes: number): Due {
  // In the whole seconds that the clock shows: a dose follows its start by some milliseconds.
  const [now, earliest, latest] = [nowMinutes, nextDue.earliestMinutes, nextDue.latestMinutes].map(
    (minutes) => Math.floor(minutes * 60 + 1e-6),
  ) as [number, number, number];
  if (now < earliest) return { type: "in", seconds: earliest - now };
  return now <= latest ? { type: "now" } : { type: "overdue", seconds: now - latest };
}

/** The lines with a next dose, the soonest first. */
export function soonestFirst(lines: readonly TrackedLine[]): readonly TrackedLine[] {
  return lines
    .filter(({ nextDue }) => nextDue !== undefined)
    .sort((a, b) => (a.nextDue?.earliestMinutes ?? 0) - (b.nextDue?.earliestMinutes ?? 0));
}

/** What is given when a line is marked for the `times + 1`st time: the later doses may differ from the first. */
export function doseToGive(line: DoseLine, times: number): CaseDose {
  const { id: lineId, medicine, use, route, further } = line;
  const { dose, volume } = (times > 0 ? further[Math.min(times, further.length) - 1] : undefined) ?? line;
  return {
    lineId,
    medicine,
    use,
    route,
    dose,
    ...(volume && dose.unit !== "mL" && { volume: { ml: volume.ml, strength: volume.strength } }),
  };
}
