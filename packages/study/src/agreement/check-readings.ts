/** Readings of children (rows) by readers or rounds (columns), complete. Returns their numbers. */
export function checkReadings(
  action: string,
  readings: readonly (readonly number[])[],
): { readonly children: number; readonly readers: number } {
  const children = readings.length;
  const readers = readings[0]?.length ?? 0;
  if (children < 2 || readers < 2)
    throw new RangeError(
      `Cannot ${action} as there must be at least 2 children and 2 readings: current value is ${children} by ${readers}`,
    );
  for (const row of readings) {
    if (row.length !== readers)
      throw new RangeError(
        `Cannot ${action} as each child must have ${readers} readings: current value is ${row.length}`,
      );
    for (const value of row)
      if (!Number.isFinite(value))
        throw new RangeError(`Cannot ${action} as readings must be finite: current value is ${value}`);
  }
  return { children, readers };
}
