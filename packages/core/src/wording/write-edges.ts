/** "from 3 kg to under 10 kg", "from 3 kg", "under 10 kg": edges as [low, high). */
export function writeEdges(
  write: (value: number) => string,
  low: number | undefined,
  high: number | undefined,
): string {
  const isOpenBelow = low === undefined || low === 0;
  if (high === undefined) return isOpenBelow ? "any" : `from ${write(low)}`;
  return isOpenBelow ? `under ${write(high)}` : `from ${write(low)} to under ${write(high)}`;
}
