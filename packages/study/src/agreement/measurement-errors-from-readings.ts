import { defaultMeasurementErrors, type MeasurementErrors, type Posture } from "@steelyard/core/body";
import { type TechnicalError, technicalError } from "./technical-error.ts";

/** Repeated readings of the same children at a site, one row per child. */
export interface SiteReadings {
  readonly armMm?: readonly (readonly number[])[];
  readonly lengthCm?: readonly {
    readonly posture: Posture;
    readonly people: "onePerson" | "twoPeople";
    readonly readings: readonly (readonly number[])[];
  }[];
}

/**
 * The measurement errors a body model should reckon with at a site, from its readers' own technical errors: arm in mm, lengths in cm.
 *
 * Each technical error takes the place of the default one, between readers if the columns are readers, within one if they are rounds. A
 * technical error knows scatter only: what all readers do wrong together (a posture's bias) does not show in it.
 *
 * `readings`: rows as for `technicalError`, which throws on others. Postures without readings keep their default.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { measurementErrorsFromReadings } from "@steelyard/study/agreement";
 *
 * const { errors } = measurementErrorsFromReadings({ armMm: [[150, 154], [160, 160], [171, 167]] });
 * assert.equal(errors.armSdMm.toFixed(2), "2.31");
 * ```
 *
 * @source ulijaszek-kerr-1999
 */
export function measurementErrorsFromReadings(readings: SiteReadings): {
  readonly errors: MeasurementErrors;
  /** What each replaced figure rests on. */
  readonly rests: readonly { readonly of: string; readonly technicalError: TechnicalError }[];
} {
  const rests: { of: string; technicalError: TechnicalError }[] = [];
  const lengthSdCm = { ...defaultMeasurementErrors.lengthSdCm };
  for (const { posture, people, readings: rows } of readings.lengthCm ?? []) {
    const own = technicalError(rows);
    rests.push({ of: `lengthCm ${posture} ${people}`, technicalError: own });
    lengthSdCm[posture] = { ...lengthSdCm[posture], [people]: own.tem.value };
  }
  let { armSdMm } = defaultMeasurementErrors;
  if (readings.armMm !== undefined) {
    const own = technicalError(readings.armMm);
    rests.push({ of: "armMm", technicalError: own });
    armSdMm = own.tem.value;
  }
  return { errors: { ...defaultMeasurementErrors, lengthSdCm, armSdMm }, rests };
}
