import { estimateWeight, idealWeight, type SiteProfile } from "@steelyard/core/body";
import { centimetres, millimetres } from "@steelyard/core/units";
import { contourLevels } from "../strip/contour-levels.ts";

/** A child to be read off the strip, and what a reader should find. */
export interface ReadingChild {
  readonly lengthCm: number;
  readonly armMm: number;
  readonly totalKg: number;
  readonly low95Kg: number;
  readonly high95Kg: number;
  readonly idealKg: number;
  /** The line nearest to the model's weight. */
  readonly lineKg: number;
  /** The other lines within 4 % of the model. */
  readonly alsoKg: readonly number[];
}

/** Invented: lengths over the whole strip, thin, usual and heavy, none on a whole five or on a line of equal arm. */
const children: readonly { readonly lengthCm: number; readonly armMm: number }[] = [
  { lengthCm: 57.4, armMm: 118 },
  { lengthCm: 136.2, armMm: 191 },
  { lengthCm: 71.8, armMm: 126 },
  { lengthCm: 98.6, armMm: 173 },
  { lengthCm: 167.3, armMm: 342 },
  { lengthCm: 84.1, armMm: 134 },
  { lengthCm: 121.7, armMm: 243 },
  { lengthCm: 151.9, armMm: 208 },
  { lengthCm: 109.3, armMm: 156 },
  { lengthCm: 182.6, armMm: 287 },
];

/** A reading this near to the model is right: twice what the nearest line may be off. */
const allowed = 0.04;

/** The ten children of the test with the answers that the model gives at a site. */
export function readChildren(site: SiteProfile | undefined): readonly ReadingChild[] {
  const options = site === undefined ? {} : { site };
  return children.map(({ lengthCm, armMm }) => {
    const estimate = estimateWeight({ lengthCm: centimetres(lengthCm), armMm: millimetres(armMm) }, options);
    const ideal = idealWeight({ lengthCm: centimetres(lengthCm) });
    if (!estimate.ok || !ideal.ok) {
      throw new RangeError(`Cannot make the test as ${lengthCm} cm and ${armMm} mm must have a weight`);
    }
    const { totalKg, low95Kg, high95Kg } = estimate.value;
    const levels = contourLevels({ lowKg: totalKg / 1.1, highKg: totalKg * 1.1 });
    const near = levels
      .map(({ kg }) => kg)
      .filter((kg) => Math.abs(kg / totalKg - 1) <= allowed)
      .sort((a, b) => Math.abs(a - totalKg) - Math.abs(b - totalKg));
    const [lineKg = totalKg, ...others] = near;
    const alsoKg = others.sort((a, b) => a - b);
    return { lengthCm, armMm, totalKg, low95Kg, high95Kg, idealKg: ideal.value, lineKg, alsoKg };
  });
}
