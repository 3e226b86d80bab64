import { scoreInterval } from "../comparison/score-interval.ts";
import { atLeast } from "./binomial-power.ts";

export interface ShareTarget {
  /** The share that shall be proved, 0.70 for the usual PW10. */
  readonly target: number;
  /** The share that is expected, above the target. */
  readonly expected: number;
  /** 0.8 when absent. */
  readonly power?: number;
  /** Confidence of the two-sided interval; 0.95 when absent. */
  readonly confidence?: number;
}

/**
 * Power of a study of `children` to show that a share (PW10, PW20) lies above a target: the chance that the lower end of its Wilson
 * interval is above it. Exact, from the binomial distribution.
 *
 * `children`: a whole number from 1; shares in (0, 1), otherwise a `RangeError`.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { powerForShare } from "@steelyard/study/sample-size";
 *
 * assert.ok(powerForShare({ children: 100, target: 0.7, expected: 0.7 }) < 0.05);
 * assert.ok(powerForShare({ children: 1000, target: 0.7, expected: 0.8 }) > 0.99);
 * ```
 *
 * @source newcombe1998
 */
export function powerForShare({
  children,
  target,
  expected,
  confidence = 0.95,
}: Omit<ShareTarget, "power"> & { readonly children: number }): number {
  checkShares("compute power", { target, expected });
  if (!Number.isInteger(children) || children < 1)
    throw new RangeError(
      `Cannot compute power as children must be a whole number from 1: current value is ${children}`,
    );
  // The lower end grows with the count, so the fewest that suffice are found by halving.
  let [fails, holds] = [-1, children + 1];
  while (holds - fails > 1) {
    const middle = (fails + holds) >> 1;
    if (scoreInterval(middle, children, confidence).low > target) holds = middle;
    else fails = middle;
  }
  return atLeast(holds, children, expected);
}

/**
 * Children needed to prove a share (PW10, PW20) above a target with the power asked for.
 *
 * Power goes up and down as counts step, so the answer is the fewest from which on it never falls below again (within the next 200
 * numbers of children).
 *
 * Throws a `RangeError` unless 0 < target < expected < 1, or when more than a million would be needed.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { childrenForShare } from "@steelyard/study/sample-size";
 *
 * const children = childrenForShare({ target: 0.7, expected: 0.8 });
 * assert.ok(children > 130 && children < 200);
 * ```
 *
 * @source newcombe1998
 */
export function childrenForShare({ target, expected, power = 0.8, confidence = 0.95 }: ShareTarget): number {
  checkShares("compute children", { target, expected });
  if (!(expected > target))
    throw new RangeError(
      `Cannot compute children as expected must be above target ${target}: current value is ${expected}`,
    );
  const reaches = (children: number): boolean =>
    powerForShare({ children, target, expected, confidence }) >= power;
  let high = 8;
  while (!reaches(high) || !reaches(high + 1)) {
    high *= 2;
    if (high > 2e6)
      throw new RangeError(
        `Cannot compute children as expected must be further from target: current value is ${expected}`,
      );
  }
  let answer = 2 * high;
  let held = 0;
  for (let children = Math.min(2 * high, high + 200); children >= 1; children--) {
    if (reaches(children)) {
      answer = children;
      held++;
    } else if (held > 0 || children < high) break;
  }
  return answer;
}

/**
 * Children needed to know a share (PW10, PW20) within plus or minus `halfWidth`: the fewest whose Wilson interval is that narrow.
 *
 * `expected` and `halfWidth` in (0, 1), otherwise a `RangeError`.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { childrenForShareWithin } from "@steelyard/study/sample-size";
 *
 * assert.equal(childrenForShareWithin({ expected: 0.7, halfWidth: 0.05 }), 320);
 * ```
 *
 * @source newcombe1998
 */
export function childrenForShareWithin({
  expected,
  halfWidth,
  confidence = 0.95,
}: {
  readonly expected: number;
  readonly halfWidth: number;
  readonly confidence?: number;
}): number {
  checkShares("compute children", { expected, halfWidth });
  const narrow = (n: number): boolean => {
    const { low, high } = scoreInterval(expected * n, n, confidence);
    return (high - low) / 2 <= halfWidth;
  };
  return fewest(narrow);
}

/** The fewest for which a condition that stays true once it is holds. */
export function fewest(holds: (n: number) => boolean): number {
  let high = 1;
  while (!holds(high)) {
    high *= 2;
    if (high > 2 ** 40)
      throw new RangeError(`Cannot compute children as so many would be needed: current value is ${high}`);
  }
  let low = Math.floor(high / 2);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function checkShares(action: string, shares: Readonly<Record<string, number>>): void {
  for (const [name, share] of Object.entries(shares))
    if (!(share > 0 && share < 1))
      throw new RangeError(`Cannot ${action} as ${name} must be in (0, 1): current value is ${share}`);
}
