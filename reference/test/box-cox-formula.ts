export interface Curve {
  readonly logMedian: number;
  readonly sigma: number;
  readonly lambda: number;
}

/**
 * z of a value by the published formula, ((q/M)^lambda - 1) / (lambda S), and straight in ln q where (q/M)^lambda is below a
 * quarter, as the model's documents say. Written a second time so that the tests do not lean on the code they test.
 *
 * @source cole1992
 */
export function formulaZ({ logMedian, sigma, lambda }: Curve, value: number): number {
  const ratio = value / Math.exp(logMedian);
  if (lambda === 0) return Math.log(ratio) / sigma;
  const power = ratio ** lambda;
  if (power >= 0.25) return (power - 1) / (lambda * sigma);
  const knee = 0.25 ** (1 / lambda);
  return -0.75 / (lambda * sigma) + (0.25 / sigma) * Math.log(ratio / knee);
}

/** dz / d ln value. */
export function formulaSlope({ logMedian, sigma, lambda }: Curve, value: number): number {
  return Math.max((value / Math.exp(logMedian)) ** lambda, 0.25) / sigma;
}

/** The value at a z short of the quarter. */
export function formulaValue({ logMedian, sigma, lambda }: Curve, z: number): number {
  return (
    Math.exp(logMedian) * (lambda === 0 ? Math.exp(sigma * z) : (1 + lambda * sigma * z) ** (1 / lambda))
  );
}
