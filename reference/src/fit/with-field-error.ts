import {
  type BodyModel,
  referenceMeasurementErrors,
  referenceSite,
  referenceTechnique,
} from "@steelyard/core/body";
import { type JudgedRow, judge } from "../judge.ts";
import { normalRandom, seededRandom } from "../seeded-random.ts";
import type { FitChild } from "./fit-child.ts";
import { measureSet } from "./measure-sets.ts";

const lengthSdCm = 1;
const armSdMm = 3;
/** What the fit's own technique has already (see `referenceTechnique`): the site's total is the root of the sum of squares. */
const total = {
  lengthCm: Math.hypot(lengthSdCm, referenceTechnique.lengthSdCm),
  armMm: Math.hypot(armSdMm, referenceTechnique.armSdMm),
};

/** Every child measured again by clumsier hands: length + arm with errors added, the site's errors known to the model. */
export function withFieldError(given: {
  children: readonly FitChild[];
  modelFor: (child: FitChild) => BodyModel;
}): readonly JudgedRow<FitChild>[] {
  const normal = normalRandom(seededRandom(20261125));
  const clumsy = given.children.map((child) => ({
    original: child,
    weightKg: child.weightKg,
    measured: {
      ...child,
      lengthCm: child.lengthCm + lengthSdCm * normal(),
      ...(child.armMm === undefined ? {} : { armMm: child.armMm + armSdMm * normal() }),
    },
  }));
  const lying = { onePerson: total.lengthCm, twoPeople: total.lengthCm };
  const site = {
    ...referenceSite,
    errors: {
      ...referenceMeasurementErrors,
      lengthSdCm: { lying, "half-sitting": lying, seated: lying },
      armSdMm: total.armMm,
    },
  };
  const judged = judge({
    children: clumsy,
    measure: ({ measured }) => {
      const measurements = measureSet("length + arm").measure(measured);
      return measurements === undefined ? undefined : { ...measurements, posture: "lying" };
    },
    modelFor: ({ original }) => given.modelFor(original),
    site,
  });
  return judged.rows.map((row) => ({ ...row, child: row.child.original }));
}
