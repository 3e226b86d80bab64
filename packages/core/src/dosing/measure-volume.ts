import {
  ceilToMultiple,
  compare,
  divide,
  exactly,
  floorToMultiple,
  fraction,
  multiply,
  type Rational,
  roundToMultiple,
  subtract,
  toNumber,
} from "../units/rational.ts";
import type { VolumeRounding } from "./formulary.ts";
import { LARGE_VOLUME_STEPS, type Syringe } from "./syringes.ts";
import type { Writable } from "./writable.ts";

export interface MeasuredVolume {
  readonly ml: Rational;
  readonly markMl: number;
  readonly syringeMl?: number;
  /** Rounded as the source of the dose says, whatever the error. */
  readonly byRule?: true;
  /** Of the volume drawn against the exact one, signed, to 0.1 %. */
  readonly errorPercent: number;
}

/**
 * The volume as the smallest syringe that holds it can measure it: the nearest mark, unless that passes the
 * maximum (then the mark below) or falls under the minimum (then the mark above, if the maximum allows it).
 */
export function measureVolume({
  exactMl,
  maximumMl,
  minimumMl,
  syringes,
  rounding,
}: {
  readonly exactMl: Rational;
  readonly maximumMl?: Rational | undefined;
  readonly minimumMl?: Rational | undefined;
  readonly syringes: readonly Syringe[];
  readonly rounding?: VolumeRounding | undefined;
}): MeasuredVolume {
  const syringe = syringes.find(({ capacityMl }) => compare(exactMl, exactly(capacityMl)) <= 0);
  const markMl = rounding?.toMl ?? syringe?.markMl ?? largeVolumeStepMl(toNumber(exactMl));
  const mark = exactly(markMl);
  const isAllowed = (ml: Rational): boolean => maximumMl === undefined || compare(ml, maximumMl) <= 0;

  const nearest = ROUND[rounding?.direction ?? "nearest"](exactMl, mark);
  let ml = isAllowed(nearest) ? nearest : floorToMultiple(exactMl, mark);
  if (ml.numerator === 0 && rounding !== undefined && isAllowed(mark)) ml = mark;
  if (minimumMl !== undefined && compare(ml, minimumMl) < 0) {
    const above = ceilToMultiple(minimumMl, mark);
    if (isAllowed(above)) ml = above;
  }
  const measured: Writable<MeasuredVolume> = {
    ml,
    markMl,
    errorPercent: errorPercent({ exact: exactMl, rounded: ml }),
  };
  if (rounding) measured.byRule = true;
  if (syringe) measured.syringeMl = syringe.capacityMl;
  return measured;
}

const ROUND: Readonly<Record<VolumeRounding["direction"], (value: Rational, step: Rational) => Rational>> = {
  up: ceilToMultiple,
  down: floorToMultiple,
  nearest: roundToMultiple,
};

function largeVolumeStepMl(ml: number): number {
  return LARGE_VOLUME_STEPS.find(({ upToMl }) => ml <= upToMl)?.stepMl ?? 10;
}

/** 100 (rounded - exact) / exact, to 0.1 %, never to 0 where there is a difference. */
export function errorPercent({
  exact,
  rounded,
}: {
  readonly exact: Rational;
  readonly rounded: Rational;
}): number {
  const percent = toNumber(multiply(divide(subtract(rounded, exact), exact), fraction(100, 1)));
  if (percent === 0) return 0;
  return Math.sign(percent) * Math.max(0.1, Math.round(Math.abs(percent) * 10) / 10);
}
