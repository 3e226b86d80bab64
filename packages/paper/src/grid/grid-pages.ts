/** The rows and columns of one page of the grid. */
export interface GridRange {
  readonly fromCm: number;
  readonly toCm: number;
  readonly armFromMm: number;
  readonly armToMm: number;
  readonly armStepMm: number;
}

/**
 * A row every centimetre. Columns 5 mm apart where an arm of 5 mm more is 3 to 8 % of weight, 10 mm later: the nearest cell is
 * within about 4 % of the model; the strip is finer.
 */
export const gridRanges: readonly GridRange[] = [
  { fromCm: 45, toCm: 84, armFromMm: 65, armToMm: 205, armStepMm: 5 },
  { fromCm: 85, toCm: 124, armFromMm: 110, armToMm: 360, armStepMm: 10 },
  { fromCm: 125, toCm: 164, armFromMm: 130, armToMm: 480, armStepMm: 10 },
  { fromCm: 165, toCm: 200, armFromMm: 170, armToMm: 500, armStepMm: 10 },
];
