/** A weight that a line is drawn for. */
export interface ContourLevel {
  readonly kg: number;
  /** Every fifth line is strong and labelled often. */
  readonly strong: boolean;
}

/** Steps of the lines, in hundredths of a kilogram: from which weight on, and how far apart. */
const steps: readonly { readonly from: number; readonly step: number }[] = [
  { from: 81, step: 3 },
  { from: 135, step: 5 },
  { from: 270, step: 10 },
  { from: 540, step: 20 },
  { from: 1400, step: 50 },
  { from: 2700, step: 100 },
  { from: 5400, step: 200 },
  { from: 10800, step: 400 },
  { from: 14000, step: 500 },
];
const heaviest = 30_000;
/** Where the step changes, the next strong line waits until the last is this many lines away. */
const fewestBetween = 3;

/**
 * The weights of the contour lines between two weights, kg.
 *
 * Neighbours are never more than 3.8 % apart, so that the nearest line is never as much as 2 % off: midway it is 1.9 %,
 * and the nearest on paper may be a little past midway, since lines do not lie evenly.
 */
export function contourLevels({ lowKg, highKg }: { lowKg: number; highKg: number }): readonly ContourLevel[] {
  const levels: ContourLevel[] = [];
  let sinceStrong = fewestBetween;
  for (const [i, { from, step }] of steps.entries()) {
    const end = steps[i + 1]?.from ?? heaviest;
    for (let hundredths = from; hundredths < end; hundredths += step) {
      const kg = hundredths / 100;
      sinceStrong += 1;
      const strong = hundredths % (step * 5) === 0 && sinceStrong > fewestBetween;
      if (strong) sinceStrong = 0;
      if (kg >= lowKg && kg <= highKg) levels.push({ kg, strong });
    }
  }
  return levels;
}
