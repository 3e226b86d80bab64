import { type BodyModel, type Build, boxCoxZ } from "@steelyard/core/body";

/** Error of a build judged by eye, in SD of weight for length, as in `defaultMeasurementErrors`. @source build-by-eye-2025 */
const eyeSd = 1.05;
/** The 3rd, 15th, 85th and 97th centile. */
const cuts: readonly (readonly [below: number, build: Build])[] = [
  [-1.881, "very-thin"],
  [-1.036, "thin"],
  [1.036, "average"],
  [1.881, "heavy"],
  [Number.POSITIVE_INFINITY, "very-heavy"],
];

/** The word somebody might have chosen for a child of this weight: the truth with the eye's error, cut into five. */
export function buildByEye(given: {
  model: BodyModel;
  child: { readonly sex: "m" | "f"; readonly lengthCm: number; readonly weightKg: number };
  normal: () => number;
}): Build {
  const { sex, lengthCm, weightKg } = given.child;
  const curve = given.model.byLength.at(sex, lengthCm).curve("weight");
  const seen = boxCoxZ(curve, Math.log(weightKg)) + eyeSd * given.normal();
  return (cuts.find(([below]) => seen < below) as (typeof cuts)[number])[1];
}
