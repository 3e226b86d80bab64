import type { BodyModel } from "./body-model.ts";
import { limbFraction } from "./limb-fraction.ts";
import type { Measurements, Sex } from "./measurements.ts";
import { type NamedObservation, observeMeasurements } from "./observe-measurements.ts";
import { ObservedNormal } from "./observed-normal.ts";
import type { SiteProfile } from "./site-profile.ts";

/** How well measurements belong to one child. */
export interface MeasurementDensity {
  /** ln density per unit of ln of every measurement; minus infinity where no child has them. */
  readonly logDensity: number;
  /** Squared distance from what is expected, in standard deviations, of the nearer sex. */
  readonly squaredDistance: number;
}

/** A number that nothing is known of may be anything within two decades. */
export const logDensityOfAnything: number = -Math.log(Math.log(100));

/**
 * Degrees of freedom of the multivariate Student's t that the measurements are judged by. The joint normal of the fit has no room
 * for other populations and for the rough measurements of real rows; so heavy a tail has. Of 4, 6, 8 and 12, 4 recognises the most slips at the
 * same share of false alarms.
 *
 * @source nhanes the half of the rows that tunes
 * @source nutrition-surveys likewise
 */
const tailDf = 4;
/** Gamma((4 + 1)/2) / Gamma(4/2). @source abramowitz1964 6.1.12 */
const gammaRatio = 0.75 * Math.sqrt(Math.PI);

/** Lengths that stand for all, where the length is not known, evenly spread. */
const lengthSteps = 32;

/** A squared distance at which the sums below would lose their digits, long after any child. */
const outOfThisWorld = 1e12;

const impossible: MeasurementDensity = {
  logDensity: Number.NEGATIVE_INFINITY,
  squaredDistance: Number.POSITIVE_INFINITY,
};

/**
 * The density of all measurements of a child together, by the joint model along length.
 *
 * The length itself is taken to be anything within the model's range, equally likely by the centimetre; where it is not known the
 * density is averaged over that. Measurements the model has no data on at a length add what is known of nothing. The unknown sex is a mixture.
 */
export function measurementDensity({
  measurements,
  model,
  site,
}: {
  measurements: Measurements;
  model: BodyModel;
  site: SiteProfile;
}): MeasurementDensity {
  const { sex, lengthCm } = measurements;
  const sexes: readonly Sex[] = sex === undefined ? ["m", "f"] : [sex];
  const observations = observeAll({ measurements, model, site, sexes });
  const { low, high } = model.byLength.index;
  if (!observations.every(isComputable)) return impossible;
  const along = (length: number): MeasurementDensity =>
    mixture(sexes.map((own) => densityAt({ model, sex: own, length, observations })));
  if (lengthCm === undefined) {
    if (observations.length === 0) return { logDensity: 0, squaredDistance: 0 };
    const step = (high - low) / lengthSteps;
    const parts = Array.from({ length: lengthSteps }, (_, i) => along(low + (i + 0.5) * step));
    const { logDensity, squaredDistance } = mixture(parts);
    return { logDensity: logDensity - Math.log(lengthSteps), squaredDistance };
  }
  if (!(lengthCm >= low && lengthCm <= high)) return impossible;
  const { logDensity, squaredDistance } = along(lengthCm);
  return { logDensity: logDensity + Math.log(lengthCm / (high - low)), squaredDistance };
}

/** Zero, less, and numbers beyond all units have no logarithm to compute with. */
function isComputable({ observation }: NamedObservation): boolean {
  return "z" in observation || Math.abs(observation.logValue) < 30;
}

function observeAll(given: {
  measurements: Measurements;
  model: BodyModel;
  site: SiteProfile;
  sexes: readonly Sex[];
}): readonly NamedObservation[] {
  const { measurements, model, site, sexes } = given;
  const { missingLimb, scaleKg, armReadings: _, ...rest } = measurements;
  const wholeBody = 1 - (missingLimb === undefined ? 0 : limbFraction[missingLimb]);
  const observations = observeMeasurements({
    measurements: rest,
    index: "length",
    errors: site.errors,
    byAge: model.byAge,
    sexes,
    wholeBody,
  });
  if (scaleKg !== undefined) {
    const observation = {
      quantity: "weight",
      logValue: Math.log(scaleKg / wholeBody),
      logVariance: 0,
    } as const;
    observations.push({ name: "scaleKg", value: scaleKg, trust: 4, observation });
  }
  // Better technique than that of the fit is no help in finding slips, and would make tiny numbers look exact.
  return observations.map((own) =>
    "logVariance" in own.observation && own.observation.logVariance < 0
      ? { ...own, observation: { ...own.observation, logVariance: 0 } }
      : own,
  );
}

function densityAt(given: {
  model: BodyModel;
  sex: Sex;
  length: number;
  observations: readonly NamedObservation[];
}): MeasurementDensity {
  const { model, sex, length, observations } = given;
  const at = model.byLength.at(sex, length);
  const known = observations
    .map(({ observation }) => observation)
    .filter(({ quantity }) => model.byLength.covers(quantity, length));
  const unknown = observations.length - known.length;
  const { logDensity, squaredDistance } = new ObservedNormal(at, known);
  if (!(squaredDistance < outOfThisWorld)) return impossible;
  return {
    // ObservedNormal has the normal's exponent in it, and no constant.
    logDensity:
      Math.log(Math.max(at.share, 1e-12)) +
      (logDensity + squaredDistance / 2) +
      logStudent({ n: known.length, squaredDistance }) +
      unknown * logDensityOfAnything,
    squaredDistance,
  };
}

/** ln density of a multivariate Student's t of n dimensions with unit scale. */
function logStudent({ n, squaredDistance }: { n: number; squaredDistance: number }): number {
  return logConstant(n) - ((tailDf + n) / 2) * Math.log1p(squaredDistance / tailDf);
}

/** ln of Gamma((df + n)/2) / (Gamma(df/2) (df pi)^(n/2)), climbing in steps of 2 from n = 0 or 1. */
function logConstant(n: number): number {
  let log = n % 2 === 0 ? 0 : Math.log(gammaRatio);
  for (let k = n % 2; k < n; k += 2) log += Math.log((tailDf + k) / 2);
  return log - (n / 2) * Math.log(tailDf * Math.PI);
}

/** The sum of densities. */
function mixture(parts: readonly MeasurementDensity[]): MeasurementDensity {
  const largest = Math.max(...parts.map(({ logDensity }) => logDensity));
  if (largest === Number.NEGATIVE_INFINITY) return impossible;
  const sum = parts.reduce((total, { logDensity }) => total + Math.exp(logDensity - largest), 0);
  return {
    logDensity: largest + Math.log(sum),
    squaredDistance: Math.min(...parts.map(({ squaredDistance }) => squaredDistance)),
  };
}
