/** Bands of length, each with its middle. */
export interface LengthBand {
  readonly low: number;
  readonly high: number;
  readonly middle: number;
}

/** Bands of `step` cm from `from` to `to`. */
export function lengthBands({
  from,
  to,
  step,
}: {
  from: number;
  to: number;
  step: number;
}): readonly LengthBand[] {
  return Array.from({ length: Math.round((to - from) / step) }, (_, i) => {
    const low = from + i * step;
    return { low, high: low + step, middle: low + step / 2 };
  });
}

/** The rows whose child's length lies in the band. */
export function inBand<T extends { readonly child: { readonly lengthCm: number } }>(
  rows: readonly T[],
  { low, high }: LengthBand,
): readonly T[] {
  return rows.filter(({ child }) => child.lengthCm >= low && child.lengthCm < high);
}
