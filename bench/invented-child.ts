import type { Build, Sex } from "@steelyard/core/body";

/** What is invented of one child, each number as it would be typed. */
export interface InventedChild {
  readonly lengthCm: number;
  readonly armMm: number;
  readonly waistCm: number;
  readonly thighCm: number;
  readonly calfCm: number;
  readonly ageMonths: number;
  readonly sex: Sex;
  readonly build: Build;
}

/** An invented child: lengths spread over the whole range, girths over the usual width at that length. */
export function inventedChild(i: number): InventedChild {
  const lengthCm = 55 + ((i * 7919) % 1300) / 10;
  const thickness = 0.85 + 0.45 * (((i * 104_729) % 1000) / 1000);
  const middle = 105 + 1.1 * (lengthCm - 50);
  return {
    lengthCm: Number(lengthCm.toFixed(1)),
    armMm: Math.round(middle * thickness),
    waistCm: Number(((32 + 0.24 * lengthCm) * (0.5 + 0.5 * thickness)).toFixed(1)),
    thighCm: Number((0.19 * middle * (0.3 + 0.7 * thickness) + 6).toFixed(1)),
    calfCm: Number((0.14 * middle * (0.4 + 0.6 * thickness) + 2.5).toFixed(1)),
    ageMonths: Math.round(Math.min(Math.max((lengthCm - 50) * 1.45, 1), 215)),
    sex: i % 2 === 0 ? "f" : "m",
    build: (["thin", "average", "heavy"] as const)[i % 3] as Build,
  };
}
