/**
 * y at x on the line through the points (xs, ys); xs ascending, two points or more. Before the first and past
 * the last point it keeps their y.
 */
export function piecewiseLinear(xs: ArrayLike<number>, ys: ArrayLike<number>, x: number): number {
  let low = 0;
  let high = xs.length - 1;
  if (x <= (xs[low] as number)) return ys[low] as number;
  if (x >= (xs[high] as number)) return ys[high] as number;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((xs[middle] as number) <= x) low = middle;
    else high = middle;
  }
  const from = xs[low] as number;
  const share = (x - from) / ((xs[high] as number) - from);
  return (ys[low] as number) + share * ((ys[high] as number) - (ys[low] as number));
}
