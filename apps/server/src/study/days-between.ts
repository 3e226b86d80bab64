const DAY_MS = 24 * 60 * 60 * 1000;

/** Whole days from the day (UTC) of a time to another day. */
export function daysBetween(startedAt: string, on: string): number {
  return Math.round((Date.parse(on) - Date.parse(startedAt.slice(0, 10))) / DAY_MS);
}
