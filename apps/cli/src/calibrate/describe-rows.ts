import type { Tally } from "../weigh/tally.ts";
import type { WeighedRows } from "./read-weighed-rows.ts";

/** Row numbers that are listed before the rest is only counted. */
const listed = 8;

/** What became of the rows, and which are worth a second look. */
export function describeRows({ tally, rows }: { tally: Tally; rows: WeighedRows }): string[] {
  const n = (count: number): string => count.toLocaleString("en-GB");
  const reasons = [...tally.marked]
    .sort(([, a], [, b]) => b - a)
    .map(([reason, count]) => `${reason} ${n(count)}`);
  const leftOut = tally.rows - tally.served;
  const noted = tally.noted > 0 ? ` (${n(tally.noted)} with a note)` : "";
  const { unlikely, undated, dates } = rows;
  const shown = unlikely.slice(0, listed).map(n).join(", ");
  const others = unlikely.length > listed ? ` and ${n(unlikely.length - listed)} more` : "";
  return [
    `${n(tally.rows)} ${tally.rows === 1 ? "row" : "rows"}: ${n(tally.served)} used${noted}, ${n(leftOut)} left out${
      leftOut > 0 ? `: ${reasons.join(", ")}` : ""
    }.`,
    ...(dates === undefined ? [] : [`Weighed from ${dates.from} to ${dates.to}.`]),
    ...(undated === 0 ? [] : [`Dates that are no day such as 2026-11-25, and were not used: ${n(undated)}.`]),
    ...(unlikely.length === 0
      ? []
      : [
          `Scale weights far outside what was measured predicts: row ${shown}${others}. They count for little; check them.`,
        ]),
  ];
}
