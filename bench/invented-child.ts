import { type Build, boxCoxLogValue, defaultBodyModel, type Quantity, type Sex } from "@steelyard/core/body";

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
  readonly carerKg: number;
}

/**
 * An invented child: lengths spread over the whole range, builds over the usual width, and measurements that belong to one
 * body as far as those of real children do, each with its own deviation. One waist in forty is misread, so that conflicts are
 * settled as well.
 */
export function inventedChild(i: number): InventedChild {
  const sex: Sex = i % 2 === 0 ? "f" : "m";
  const lengthCm = Number((55 + ((i * 7919) % 1300) / 10).toFixed(1));
  const at = defaultBodyModel().byLength.at(sex, lengthCm);
  const thickness = spread(i, 104_729) * 1.6;
  const value = (quantity: Quantity, step: number): number => {
    const z = 0.9 * thickness + 0.4 * spread(i, step);
    return Math.exp(boxCoxLogValue(at.curve(quantity), z));
  };
  const tenth = (value: number): number => Number(value.toFixed(1));
  const months = Math.exp(boxCoxLogValue(at.curve("age"), spread(i, 15_485_863)));
  return {
    lengthCm,
    armMm: Math.round(value("arm", 1_299_709)),
    waistCm: tenth(value("waist", 611_953) * (i % 40 === 0 ? 1.5 : 1)),
    thighCm: tenth(value("thigh", 350_377)),
    calfCm: tenth(value("calf", 224_737)),
    ageMonths: Math.round(Math.min(Math.max(months - 9, 1), 215)),
    sex,
    build: thickness < -0.8 ? "thin" : thickness > 0.8 ? "heavy" : "average",
    carerKg: tenth(value("weight", 479_909)),
  };
}

/** Evenly spread over -1 to 1, and the same every time. */
function spread(i: number, step: number): number {
  return ((i * step) % 2003) / 1001 - 1;
}
