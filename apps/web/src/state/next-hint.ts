import type { NextMeasurement } from "@steelyard/core/body";

/** A further girth and what it would make of the 95 % range. */
export interface NextHint {
  readonly field: NextMeasurement["measurement"];
  /** Half the range, % of the weight. */
  readonly percent: number;
}
