import { scoreInterval } from "../comparison/score-interval.ts";

/** A count of n as a share with its 95 % interval, all 0 to 1. */
export interface Proportion {
  readonly count: number;
  readonly n: number;
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/** Wilson's score interval of a proportion, 95 %. @source newcombe1998 method 3 */
export function wilsonInterval(count: number, n: number): Proportion {
  return { count, n, share: count / n, ...scoreInterval(count, n, 0.95) };
}
