import { canonicalText } from "./canonical-text.ts";
import type { CaseEvent } from "./case-event.ts";

export interface OrderedEvents {
  /** By time, then by id, each id once. */
  readonly events: readonly CaseEvent[];
  /** Ids under which two different events were found. */
  readonly conflictingIds: readonly string[];
}

/**
 * Events in the one order that every device comes to, whatever order and how often they arrived.
 *
 * By `at`, then by `id`. Of two different events under one id, which only a broken device makes, the one whose text is
 * less counts everywhere, and the id is told.
 */
export function orderEvents(events: readonly CaseEvent[]): OrderedEvents {
  const byId = new Map<string, CaseEvent>();
  const conflicting = new Set<string>();
  for (const event of events) {
    const known = byId.get(event.id);
    if (known === undefined) byId.set(event.id, event);
    else if (known !== event) {
      const [before, after] = [canonicalText(known), canonicalText(event)];
      if (before !== after) conflicting.add(event.id);
      if (after < before) byId.set(event.id, event);
    }
  }
  return {
    events: [...byId.values()].sort((a, b) => compareText(a.at, b.at) || compareText(a.id, b.id)),
    conflictingIds: [...conflicting].sort(compareText),
  };
}

/** Not by the language of the machine. */
function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
