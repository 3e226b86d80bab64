import type { Quantity } from "./body-reference.ts";
import { boxCoxPower, boxCoxSlopeOf, boxCoxZOf } from "./box-cox.ts";
import type { BodyAt } from "./indexed-model.ts";

/** A quantity observed with an error of its own, beyond what the children of the fit were measured with. */
export type Observation =
  | {
      readonly quantity: Quantity;
      /** ln of the value, in the unit of the model. */
      readonly logValue: number;
      /** Variance of the extra error of ln value; below 0 when several readings were averaged. */
      readonly logVariance: number;
    }
  | {
      readonly quantity: Quantity;
      /** A judgement that is a z-score in itself, such as build by eye. */
      readonly z: number;
      readonly zVariance: number;
    };

/** A z-score given observations. */
export interface Conditioned {
  readonly mean: number;
  readonly variance: number;
}

/** One observation beside what all the others expect of it. */
export interface LeftOut {
  /** Its z less what the others expect. */
  readonly excess: number;
  /** Of that excess, the observation's own error included. */
  readonly variance: number;
}

/**
 * What is left of an observation's variance once those before it are known is at least this: averaged readings take error out of it that
 * the correlations still hold, and where several girths say nearly the same there could be nothing left.
 */
const leastPivot = 0.02;
/** Nothing is known exactly. */
const leastVariance = 1e-6;

/**
 * The joint normal of what was observed of one body, factorised once: whatever is asked of it then is a few sums.
 *
 * With R the correlations of the observed z-scores and the error variances added on its diagonal, L is its Cholesky
 * factor and u = L^-1 z. Throws a `RangeError` when an observation is not a number.
 */
export class ObservedNormal {
  readonly at: BodyAt;
  readonly observations: readonly Observation[];
  /** ln density of the observations themselves, up to a constant that all sexes and lengths share. */
  readonly logDensity: number;
  /** Squared distance of the observations from what is expected, in standard deviations: chi-squared, one degree for each. */
  readonly squaredDistance: number;
  /** L by rows, each as long as it is filled. */
  readonly #factor: number[];
  readonly #u: number[];

  constructor(at: BodyAt, observations: readonly Observation[]) {
    this.at = at;
    this.observations = observations;
    const n = observations.length;
    const factor = new Array<number>(rowOf(n));
    const u = new Array<number>(n);
    this.#factor = factor;
    this.#u = u;
    let logDensity = 0;
    let squaredDistance = 0;
    for (let i = 0; i < n; i++) {
      const observation = observations[i] as Observation;
      const { quantity } = observation;
      const standard = standardise(at, observation);
      let { z, ownVariance: pivot } = standard;
      const row = rowOf(i);
      for (let j = 0; j < i; j++) {
        let sum = at.correlation(quantity, (observations[j] as Observation).quantity);
        const above = rowOf(j);
        for (let k = 0; k < j; k++) sum -= (factor[row + k] as number) * (factor[above + k] as number);
        const below = sum / (factor[above + j] as number);
        factor[row + j] = below;
        pivot -= below * below;
        z -= below * (u[j] as number);
      }
      if (Number.isNaN(pivot)) {
        throw new RangeError(`Cannot condition as every observation must be a number: ${quantity} is not`);
      }
      pivot = Math.max(pivot, leastPivot);
      const root = Math.sqrt(pivot);
      factor[row + i] = root;
      const own = z / root;
      u[i] = own;
      logDensity += Math.log(standard.slope / root) - (own * own) / 2;
      squaredDistance += own * own;
    }
    this.logDensity = logDensity;
    this.squaredDistance = squaredDistance;
  }

  /** The z-score of a quantity given the observations: with r its correlations, mean r R^-1 z and variance 1 - r R^-1 r. */
  condition(target: Quantity): Conditioned {
    const factor = this.#factor;
    const n = this.#u.length;
    const v = new Array<number>(n);
    let mean = 0;
    let variance = 1;
    for (let i = 0; i < n; i++) {
      const row = rowOf(i);
      let r = this.at.correlation(target, (this.observations[i] as Observation).quantity);
      for (let j = 0; j < i; j++) r -= (factor[row + j] as number) * (v[j] as number);
      const own = r / (factor[row + i] as number);
      v[i] = own;
      mean += own * (this.#u[i] as number);
      variance -= own * own;
    }
    return { mean, variance: Math.max(variance, leastVariance) };
  }

  /**
   * Observation i beside what all the others expect of it: with K = R^-1, the excess is (K z)_i / K_ii and its
   * variance 1 / K_ii, so that nothing is factorised again.
   *
   * @source rasmussen2006 5.4.2
   */
  leaveOneOut(i: number): LeftOut {
    const factor = this.#factor;
    const u = this.#u;
    // Column i of L^-1, from the diagonal down.
    const column = new Array<number>(u.length - i);
    let precision = 0;
    let product = 0;
    for (let k = i; k < u.length; k++) {
      const row = rowOf(k);
      let sum = k === i ? 1 : 0;
      for (let j = i; j < k; j++) sum -= (factor[row + j] as number) * (column[j - i] as number);
      const own = sum / (factor[row + k] as number);
      column[k - i] = own;
      precision += own * own;
      product += own * (u[k] as number);
    }
    return { excess: product / precision, variance: Math.max(1 / precision, leastVariance) };
  }

  /** Observation i as a z-score, and ln density of all the others, up to the constant of `logDensity`. */
  without(i: number): { readonly z: number; readonly logDensity: number } {
    const { z, slope } = standardise(this.at, this.observations[i] as Observation);
    const { excess, variance } = this.leaveOneOut(i);
    return {
      z,
      logDensity: this.logDensity - Math.log(slope) + (Math.log(variance) + excess ** 2 / variance) / 2,
    };
  }
}

/** An observation as a z-score of this body: with dz / d ln value, and the variance of z among such children and such readings. */
function standardise(
  at: BodyAt,
  observation: Observation,
): { readonly z: number; readonly slope: number; readonly ownVariance: number } {
  if ("z" in observation) return { z: observation.z, slope: 1, ownVariance: 1 + observation.zVariance };
  const { logValue, logVariance } = observation;
  const curve = at.curve(observation.quantity);
  const power = boxCoxPower(curve, logValue);
  const slope = boxCoxSlopeOf(power, curve);
  // Averaged readings take away error that was there when the curve was fitted, and that is as large as it is about the median.
  const errorSlope = logVariance < 0 ? Math.min(slope, 1 / curve.sigma) : slope;
  return {
    z: boxCoxZOf(power, curve, logValue),
    slope,
    ownVariance: 1 + logVariance * errorSlope * errorSlope,
  };
}

/** Where row i of a lower triangle begins. */
function rowOf(i: number): number {
  return (i * (i + 1)) / 2;
}
