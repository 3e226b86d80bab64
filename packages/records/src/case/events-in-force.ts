import type { CaseEvent } from "./case-event.ts";

type Fate = "counts" | "replaced" | "undone";
interface Taker {
  readonly id: string;
  readonly takes: "replaced" | "undone";
}

/**
 * Ids of the events that count.
 *
 * An event is undone by an undo that counts, and replaced by a correction that is not undone: the correction of a
 * correction leaves the first event replaced. Undoing an undo makes the first count again. Clocks differ between devices, so an undo
 * counts even where its time is before that of its target. `events` in their one order, by which a ring of undos, made
 * by a broken device only, is settled the same way everywhere.
 */
export function eventsInForce(events: readonly CaseEvent[]): ReadonlySet<string> {
  const takersById = takersOf(events);
  const fateById = new Map<string, Fate>();
  for (const { id } of events) if (!fateById.has(id)) settle(id, takersById, fateById);
  return new Set(events.map(({ id }) => id).filter((id) => fateById.get(id) === "counts"));
}

/** Takers first: their word decides. An own stack, as a chain of undos may be as long as the file. */
function settle(
  start: string,
  takersById: ReadonlyMap<string, readonly Taker[]>,
  fateById: Map<string, Fate>,
): void {
  const path: { readonly id: string; next: number }[] = [{ id: start, next: 0 }];
  const onPath = new Set([start]);
  for (let top = path.at(-1); top !== undefined; top = path.at(-1)) {
    const takers = takersById.get(top.id) ?? [];
    const taker = takers[top.next];
    top.next += 1;
    if (taker === undefined) {
      fateById.set(top.id, fateOf(takers, fateById));
      onPath.delete(top.id);
      path.pop();
    } else if (!fateById.has(taker.id) && !onPath.has(taker.id)) {
      path.push({ id: taker.id, next: 0 });
      onPath.add(taker.id);
    }
  }
}

function fateOf(takers: readonly Taker[], fateById: ReadonlyMap<string, Fate>): Fate {
  const isUndone = takers.some(({ id, takes }) => takes === "undone" && fateById.get(id) === "counts");
  if (isUndone) return "undone";
  const replacers = takers.filter(({ takes }) => takes === "replaced").map(({ id }) => fateById.get(id));
  return replacers.some((fate) => fate === "counts" || fate === "replaced") ? "replaced" : "counts";
}

function takersOf(events: readonly CaseEvent[]): ReadonlyMap<string, readonly Taker[]> {
  const takersById = new Map<string, Taker[]>();
  const add = (target: string, taker: Taker): void => {
    const known = takersById.get(target);
    if (known === undefined) takersById.set(target, [taker]);
    else known.push(taker);
  };
  for (const event of events) {
    if (event.replaces !== undefined) add(event.replaces, { id: event.id, takes: "replaced" });
    if (event.type === "undo") add(event.target, { id: event.id, takes: "undone" });
  }
  return takersById;
}
