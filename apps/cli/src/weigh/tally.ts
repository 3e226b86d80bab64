/** Counts of what became of the rows. */
export interface Tally {
  rows: number;
  served: number;
  /** Rows without a weight, by reason. */
  readonly marked: Map<string, number>;
  /** Rows with a weight that carry a note. */
  noted: number;
}

export function emptyTally(): Tally {
  return { rows: 0, served: 0, marked: new Map(), noted: 0 };
}

export function countMarked(tally: Tally, reason: string): void {
  tally.marked.set(reason, (tally.marked.get(reason) ?? 0) + 1);
}

/** "1,000 rows: 990 served (3 with a note), 10 marked: length missing 8, arm circumference out of limits 2." */
export function describeTally({ rows, served, noted, marked }: Tally): string {
  const n = (count: number): string => count.toLocaleString("en-GB");
  const withNotes = noted > 0 ? ` (${n(noted)} with a note)` : "";
  const reasons = [...marked].sort(([, a], [, b]) => b - a).map(([reason, count]) => `${reason} ${n(count)}`);
  const others = rows - served;
  return `${n(rows)} ${rows === 1 ? "row" : "rows"}: ${n(served)} served${withNotes}, ${n(others)} marked${
    others > 0 ? `: ${reasons.join(", ")}` : ""
  }.`;
}
