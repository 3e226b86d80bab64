/** A number freed of the drift of binary arithmetic: twelve digits are more than any dose has and fewer than that disturbs. */
export function withoutDrift(value: number): number {
  return Number(value.toPrecision(12));
}
