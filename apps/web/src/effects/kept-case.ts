import type { CurrentCase } from "../state/current-case.ts";

const key = "steelyard.case";

/** Which case this tab writes to; survives a reload and ends with the tab, as the measurements do. */
export function keepCase(current: CurrentCase | undefined): void {
  try {
    if (current === undefined) sessionStorage.removeItem(key);
    else sessionStorage.setItem(key, JSON.stringify(current));
  } catch {
    // Storage is refused: after a reload the case is found in no list either.
  }
}

export function keptCase(): CurrentCase | undefined {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(key) ?? "null");
    if (typeof kept !== "object" || kept === null) return undefined;
    const { caseId, leftWith } = kept as Partial<CurrentCase>;
    if (typeof caseId !== "string") return undefined;
    return { caseId, ...(typeof leftWith === "string" && { leftWith }) };
  } catch {
    return undefined;
  }
}
