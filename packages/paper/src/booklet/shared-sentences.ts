/** Sentences that stand once on a page, and the mark that the lines they hold for carry instead. */
export type SharedSentences = ReadonlyMap<string, string>;

const marks = ["*", "†", "§", "¶"];

/** Fewer lines than this say it themselves. */
const fewest = 2;

/** Of sentences that may be shared, those that many lines have in common, each with its mark. */
export function shareSentences(ofEachLine: readonly (readonly string[])[]): SharedSentences {
  const counts = new Map<string, number>();
  for (const sentence of ofEachLine.flatMap((own) => [...new Set(own)])) {
    counts.set(sentence, (counts.get(sentence) ?? 0) + 1);
  }
  const common = [...counts].filter(([, count]) => count >= fewest).map(([sentence]) => sentence);
  return new Map(common.slice(0, marks.length).map((sentence, i) => [sentence, marks[i] as string]));
}
