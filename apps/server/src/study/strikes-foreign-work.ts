import type { CaseEvent } from "@steelyard/records/case";

/** What a desk may correct and take back. */
const ownTypes: ReadonlySet<CaseEvent["type"]> = new Set(["later-weight", "note"]);

/**
 * Why an event of a desk may not be taken in: it would strike, or bring back, what was measured or given at the bedside. A dose
 * that is struck is offered again there. `known`: the events of the case. undefined where it touches the desk's own work only.
 */
export function strikesForeignWork(event: CaseEvent, known: readonly CaseEvent[]): string | undefined {
  const byId = new Map(known.map((one) => [one.id, one]));
  if (event.replaces !== undefined) {
    if (!ownTypes.has(event.type)) return `a correction of type ${event.type}`;
    const corrected = byId.get(event.replaces)?.type;
    if (corrected !== event.type) return `a ${event.type} in place of ${corrected ?? "an unknown event"}`;
  }
  const reached = new Set<string>();
  const open = idsStruckBy(event);
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (reached.has(id)) continue;
    reached.add(id);
    const struck = byId.get(id);
    if (struck === undefined) return "it strikes an unknown event";
    if (!ownTypes.has(struck.type) && struck.type !== "undo") return `it strikes a ${struck.type}`;
    open.push(...idsStruckBy(struck));
  }
  return undefined;
}

function idsStruckBy(event: CaseEvent): string[] {
  const ids = [event.replaces, event.type === "undo" ? event.target : undefined];
  return ids.filter((id) => id !== undefined);
}
