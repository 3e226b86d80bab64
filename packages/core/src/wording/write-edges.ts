import { ENGLISH_VALUES, type ValueWords } from "./value-words.ts";

/** "from 3 kg to under 10 kg", "from 3 kg", "under 10 kg": edges as [low, high). */
export function writeEdges(
  write: (value: number) => string,
  low: number | undefined,
  high: number | undefined,
  words: ValueWords = ENGLISH_VALUES,
): string {
  const isOpenBelow = low === undefined || low === 0;
  if (high === undefined) return isOpenBelow ? words.any : words.from(write(low));
  return isOpenBelow ? words.under(write(high)) : words.fromToUnder(write(low), write(high));
}
