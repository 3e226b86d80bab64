/** A length (or age) the child may really have, and how likely. */
export interface IndexNode {
  readonly index: number;
  readonly weight: number;
}

/** Gauss-Hermite nodes and weights of order 5 for exp(-x^2). @source abramowitz1964 Table 25.10 */
const nodes = [
  [0, 0.945_308_720_482_942],
  [0.958_572_464_613_819, 0.393_619_323_152_241],
  [-0.958_572_464_613_819, 0.393_619_323_152_241],
  [2.020_182_870_456_086, 0.019_953_242_059_046],
  [-2.020_182_870_456_086, 0.019_953_242_059_046],
] as const;

/** The index with its error as five weighted values, or itself when there is no error to speak of. */
export function indexNodes({ index, sd }: { index: number; sd: number }): readonly IndexNode[] {
  if (sd <= 0) return [{ index, weight: 1 }];
  return nodes.map(([x, weight]) => ({
    index: index + Math.SQRT2 * sd * x,
    weight: weight / Math.sqrt(Math.PI),
  }));
}
