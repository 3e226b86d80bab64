/** More settings than this are no table to read in a hurry. */
const mostRates = 9;

/**
 * Settings of a pump from the lowest to the highest rate of an infusion, mL/h: both ends, and round steps between them, to 0.1 mL/h.
 */
export function pumpRates({
  lowMlPerH,
  highMlPerH,
}: {
  readonly lowMlPerH: number;
  readonly highMlPerH: number;
}): readonly number[] {
  if (!(highMlPerH > lowMlPerH)) return [lowMlPerH];
  const step = roundStep((highMlPerH - lowMlPerH) / (mostRates - 2));
  const first = Math.floor(lowMlPerH / step) + 1;
  const count = Math.max(0, Math.ceil(highMlPerH / step) - first);
  const between = Array.from({ length: count }, (_, i) => Math.round((first + i) * step * 10) / 10);
  const inside = between.filter((rate) => rate > lowMlPerH && rate < highMlPerH);
  return [lowMlPerH, ...inside, highMlPerH];
}

/** The next of 0.1, 0.2, 0.5, 1, 2, 5, ... at or above `step`. */
function roundStep(step: number): number {
  const power = 10 ** Math.floor(Math.log10(step));
  const factor = [1, 2, 5, 10].find((candidate) => candidate * power >= step * (1 - 1e-9)) ?? 10;
  return Math.max(0.1, factor * power);
}

/** The dose of a pump's setting is looked at, not drawn up: three figures say enough. */
export function threeFigures(amount: number): number {
  if (amount === 0) return 0;
  const perUnit = 10 ** (2 - Math.floor(Math.log10(Math.abs(amount))));
  return Math.round(amount * perUnit) / perUnit;
}
