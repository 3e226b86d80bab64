/** A count of n as a share with its 95 % interval, all 0 to 1. */
export interface Proportion {
  readonly count: number;
  readonly n: number;
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

const Z = 1.959963984540054;

/** Wilson's score interval of a proportion, 95 %. @source newcombe1998 method 3 */
export function wilsonInterval(count: number, n: number): Proportion {
  const p = count / n;
  const centre = (p + Z ** 2 / (2 * n)) / (1 + Z ** 2 / n);
  const half = (Z / (1 + Z ** 2 / n)) * Math.sqrt((p * (1 - p)) / n + Z ** 2 / (4 * n ** 2));
  return {
    count,
    n,
    share: p,
    low: count === 0 ? 0 : Math.max(0, centre - half),
    high: count === n ? 1 : Math.min(1, centre + half),
  };
}
