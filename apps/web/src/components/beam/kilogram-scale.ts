/** A stretch of the kilogram scale and the numbers written on it. */
export interface KilogramScale {
  readonly lowKg: number;
  readonly highKg: number;
  readonly ticksKg: readonly number[];
  /** Numbered marks stand this far apart; unnumbered ones at a fifth of it. */
  readonly stepKg: number;
}

/** Marks further off than this times the range would squeeze it to a needle: they are shown at the end of the beam. */
const farthest = 1.6;

/** The stretch that shows the whole range with air around it, and the named weights that lie anywhere near. */
export function kilogramScale({
  low95Kg,
  high95Kg,
  marksKg = [],
}: {
  readonly low95Kg: number;
  readonly high95Kg: number;
  readonly marksKg?: readonly number[];
}): KilogramScale {
  const spanKg = Math.max(high95Kg - low95Kg, high95Kg / 50);
  const near = marksKg.filter((kg) => kg <= high95Kg * farthest && kg >= low95Kg / farthest);
  const lowKg = Math.max(0, Math.min(low95Kg - 0.4 * spanKg, ...near.map((kg) => kg - 0.2 * spanKg)));
  const highKg = Math.max(high95Kg + 0.4 * spanKg, ...near.map((kg) => kg + 0.2 * spanKg));
  const stepKg = roundStep((highKg - lowKg) / 5);
  const first = Math.ceil(lowKg / stepKg);
  const count = Math.floor(highKg / stepKg) - first + 1;
  return {
    lowKg,
    highKg,
    stepKg,
    ticksKg: Array.from({ length: count }, (_, i) => roundOff((first + i) * stepKg)),
  };
}

/** The next of 1, 2, 5, 10, ... at or above `step`. */
function roundStep(step: number): number {
  const power = 10 ** Math.floor(Math.log10(step));
  return roundOff(power * ([1, 2, 5].find((factor) => factor * power >= step) ?? 10));
}

/** 3 x 0.1 is 0.3 on a scale. */
function roundOff(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
