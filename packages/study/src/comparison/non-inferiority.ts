import type { Interval } from "../accuracy/interval.ts";
import type { PairedCounts } from "./paired-counts.ts";
import { pairedDifference } from "./paired-difference.ts";

/** What the interval of a difference says against a margin. */
export interface NonInferiority {
  /** First minus second, with its interval at 1 - 2 alpha. */
  readonly difference: Interval;
  readonly margin: number;
  /** `superior`: above 0; `non-inferior`: above -margin; `inferior`: below -margin throughout; otherwise `undecided`. */
  readonly verdict: "superior" | "non-inferior" | "undecided" | "inferior";
}

/**
 * Whether a first method is not worse than a second by more than a margin, in shares of the same children within a limit.
 *
 * The one-sided test at `alpha` is the two-sided Newcombe interval at 1 - 2 alpha: non-inferior when its lower end is above -margin. The
 * margin is a clinical choice made before the data are seen.
 *
 * `margin`: a share between 0 and 1 (0.05 for 5 points of PW10), otherwise a `RangeError`; `alpha`: 0.025 when absent.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { testNonInferiority } from "@steelyard/study/comparison";
 *
 * const counts = { both: 700, onlyFirst: 60, onlySecond: 50, neither: 190 };
 * assert.equal(testNonInferiority({ counts, margin: 0.05 }).verdict, "non-inferior");
 * ```
 *
 * @source newcombe1998-paired
 */
export function testNonInferiority({
  counts,
  margin,
  alpha = 0.025,
}: {
  readonly counts: PairedCounts;
  readonly margin: number;
  readonly alpha?: number;
}): NonInferiority {
  if (!(margin > 0 && margin < 1))
    throw new RangeError(
      `Cannot test non-inferiority as margin must be in (0, 1): current value is ${margin}`,
    );
  const difference = pairedDifference(counts, { confidence: 1 - 2 * alpha });
  const verdict =
    difference.low > 0
      ? "superior"
      : difference.low > -margin
        ? "non-inferior"
        : difference.high < -margin
          ? "inferior"
          : "undecided";
  return { difference, margin, verdict };
}
