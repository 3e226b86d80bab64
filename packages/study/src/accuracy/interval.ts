/** A number with its interval. */
export interface Interval {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Values must be plenty enough and finite: misuse otherwise. */
export function checkValues(action: string, values: ArrayLike<number>, fewest: number): void {
  if (values.length < fewest)
    throw new RangeError(
      `Cannot ${action} as there must be at least ${fewest} values: current value is ${values.length}`,
    );
  for (let i = 0; i < values.length; i++)
    if (!Number.isFinite(values[i]))
      throw new RangeError(
        `Cannot ${action} as values must be finite: current value is ${values[i]} at ${i}`,
      );
}

/** Mean and sum of squares about it, in two passes. */
export function momentsOf(values: ArrayLike<number>): { readonly mean: number; readonly squares: number } {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i] as number;
  const mean = sum / values.length;
  let squares = 0;
  for (let i = 0; i < values.length; i++) squares += ((values[i] as number) - mean) ** 2;
  return { mean, squares };
}
