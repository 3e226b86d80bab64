/**
 * The Box-Cox-normal transform of the body model: z = ((q/M)^lambda - 1) / (lambda S), for a quantity q with
 * median M, coefficient of variation S and power lambda at this length.
 *
 * With lambda S well below 0 the plain formula ends: no weight, however large, has a z above -1 / (lambda S), about 3 in
 * boys of 120 cm. Very obese children are real, so beyond the point where (q/M)^lambda has fallen to
 * `straightFrom` the curve goes on straight in ln q, in the way WHO continues its curves beyond 3 SD.
 *
 * @source cole1992
 * @source who-growth-2006
 */
export interface BoxCox {
  /** ln M. */
  readonly logMedian: number;
  /** S. */
  readonly sigma: number;
  readonly lambda: number;
}

/** The value of (q/M)^lambda below which the transform goes on straight in ln q. */
export const straightFrom = 0.25;

/**
 * z of a positive quantity given as ln q.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { boxCoxZ } from "@steelyard/core/body";
 *
 * const boys85 = { logMedian: Math.log(11.5007), sigma: 0.08181, lambda: -0.3521 }; // WHO, weight at 85 cm
 * assert.ok(Math.abs(boxCoxZ(boys85, Math.log(13.612)) - 2) < 0.001);
 * ```
 */
export function boxCoxZ(curve: BoxCox, logValue: number): number {
  return boxCoxZOf(boxCoxPower(curve, logValue), curve, logValue);
}

/** (q/M)^lambda at ln q: the one exponential that z and its slope share. */
export function boxCoxPower(curve: BoxCox, logValue: number): number {
  return Math.exp(curve.lambda * (logValue - curve.logMedian));
}

/** `boxCoxZ` where the power is known. */
export function boxCoxZOf(power: number, curve: BoxCox, logValue: number): number {
  const { sigma, lambda } = curve;
  const logRatio = logValue - curve.logMedian;
  if (Math.abs(lambda * logRatio) < 1e-8) return logRatio / sigma;
  if (power >= straightFrom) return (power - 1) / (lambda * sigma);
  return (
    (straightFrom - 1) / (lambda * sigma) +
    ((logRatio - Math.log(straightFrom) / lambda) * straightFrom) / sigma
  );
}

/**
 * ln q at a z: the inverse of `boxCoxZ`.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { boxCoxLogValue } from "@steelyard/core/body";
 *
 * const boys85 = { logMedian: Math.log(11.5007), sigma: 0.08181, lambda: -0.3521 }; // WHO, weight at 85 cm
 * assert.ok(Math.abs(Math.exp(boxCoxLogValue(boys85, 2)) - 13.612) < 0.001);
 * ```
 */
export function boxCoxLogValue(curve: BoxCox, z: number): number {
  const { sigma, lambda } = curve;
  const tilt = lambda * sigma * z;
  if (Math.abs(tilt) < 1e-8) return curve.logMedian + sigma * z;
  const power = 1 + tilt;
  if (power >= straightFrom) return curve.logMedian + Math.log(power) / lambda;
  const knee = (straightFrom - 1) / (lambda * sigma);
  return curve.logMedian + Math.log(straightFrom) / lambda + ((z - knee) * sigma) / straightFrom;
}

/**
 * dz / d ln q at ln q, always positive: (q/M)^lambda / S, held at `straightFrom` / S beyond the knee.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { boxCoxSlope } from "@steelyard/core/body";
 *
 * const boys85 = { logMedian: Math.log(11.5007), sigma: 0.08181, lambda: -0.3521 }; // WHO, weight at 85 cm
 * assert.ok(Math.abs(boxCoxSlope(boys85, Math.log(11.5007)) - 1 / 0.08181) < 1e-9);
 * ```
 */
export function boxCoxSlope(curve: BoxCox, logValue: number): number {
  return boxCoxSlopeOf(boxCoxPower(curve, logValue), curve);
}

/** `boxCoxSlope` where the power is known. */
export function boxCoxSlopeOf(power: number, curve: BoxCox): number {
  return Math.max(power, straightFrom) / curve.sigma;
}
