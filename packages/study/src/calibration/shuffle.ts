import type { Generator } from "../bootstrap/create-generator.ts";

/** A copy in an order by chance (Fisher and Yates). */
export function shuffle<T>(items: readonly T[], { uniform }: Generator): T[] {
  const shuffled = [...items];
  for (let i = shuffled.length - 1; i > 0; i--) {
    const j = Math.floor(uniform() * (i + 1));
    const kept = shuffled[i] as T;
    shuffled[i] = shuffled[j] as T;
    shuffled[j] = kept;
  }
  return shuffled;
}
