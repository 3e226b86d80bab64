import type { SheetLine } from "@steelyard/core/dosing";

/**
 * The other published doses of each line, computed for the same child, by id of the line.
 *
 * `compute` gives the sheet with other choices; the first other dose of every line is computed at once, then the second.
 */
export function otherDoses(
  sheet: readonly SheetLine[],
  compute: (choices: Readonly<Record<string, string>>) => readonly SheetLine[],
): ReadonlyMap<string, readonly SheetLine[]> {
  const others = new Map<string, SheetLine[]>();
  const most = Math.max(0, ...sheet.map(({ alternatives }) => alternatives.length));
  for (let index = 0; index < most; index += 1) {
    const choices = sheet.flatMap(({ id, alternatives }) => {
      const other = alternatives[index];
      return other === undefined ? [] : [[id, other.id] as const];
    });
    const chosen = new Set(choices.map(([id]) => id));
    for (const line of compute(Object.fromEntries(choices))) {
      if (chosen.has(line.id)) others.set(line.id, [...(others.get(line.id) ?? []), line]);
    }
  }
  return others;
}
