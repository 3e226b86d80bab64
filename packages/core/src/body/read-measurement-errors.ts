import { err, ok, type Result } from "../result.ts";
import { defaultMeasurementErrors, type MeasurementErrors } from "./measurement-errors.ts";
import type { Build, Posture } from "./measurements.ts";
import { type FieldFault, type FieldReader, type Range, readFields } from "./read-fields.ts";

/**
 * The widest errors that still belong to a measurement; a typed 45 for 0.45 is refused, a poor technique is not. Ten times the
 * worst default, and the scale of z for a judgement (common practice).
 */
const limits = {
  lengthSdCm: [0.01, 30],
  armSdMm: [0.01, 30],
  carerLogSd: [0.001, 1],
  z: [-6, 6],
  zVariance: [0.01, 100],
} as const satisfies Record<string, Range>;

/**
 * A site's own measurement errors from a JSON object with the keys of `MeasurementErrors`: SDs in cm and mm, of ln for the carer,
 * z and its variance for build. What is left out keeps its default.
 *
 * Fails with every fault and its place.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readMeasurementErrors } from "@steelyard/core/body";
 *
 * const errors = readMeasurementErrors({ armSdMm: 2.1 });
 * assert.ok(errors.ok && errors.value.armSdMm === 2.1 && errors.value.carerLogSd === 0.097);
 * const slip = readMeasurementErrors({ armSdMm: 210 });
 * assert.ok(!slip.ok && slip.error[0]?.place === "armSdMm");
 * ```
 */
export function readMeasurementErrors(value: unknown): Result<MeasurementErrors, readonly FieldFault[]> {
  const faults: FieldFault[] = [];
  const errors = measurementErrorsOf(readFields({ value, place: "", faults }), defaultMeasurementErrors);
  return faults.length > 0 ? err(faults) : ok(errors);
}

/** The errors in an object; what is left out is a fault, or what it is in `defaults`. */
export function measurementErrorsOf(fields: FieldReader, defaults?: MeasurementErrors): MeasurementErrors {
  const sub = (from: FieldReader, name: string): FieldReader =>
    defaults !== undefined && !from.has(name)
      ? readFields({ value: {}, place: "", faults: [] })
      : from.object(name);
  const number = (from: FieldReader, name: string, range: Range, usual: number | undefined): number =>
    usual !== undefined && !from.has(name) ? usual : from.number(name, range);
  const lengths = sub(fields, "lengthSdCm");
  const builds = sub(fields, "build");
  const lengthOf = (posture: Posture): MeasurementErrors["lengthSdCm"][Posture] => {
    const own = sub(lengths, posture);
    const usual = defaults?.lengthSdCm[posture];
    return {
      onePerson: number(own, "onePerson", limits.lengthSdCm, usual?.onePerson),
      twoPeople: number(own, "twoPeople", limits.lengthSdCm, usual?.twoPeople),
    };
  };
  const buildOf = (build: Build): MeasurementErrors["build"][Build] => {
    const own = sub(builds, build);
    const usual = defaults?.build[build];
    return {
      z: number(own, "z", limits.z, usual?.z),
      zVariance: number(own, "zVariance", limits.zVariance, usual?.zVariance),
    };
  };
  return {
    lengthSdCm: {
      lying: lengthOf("lying"),
      "half-sitting": lengthOf("half-sitting"),
      seated: lengthOf("seated"),
    },
    armSdMm: number(fields, "armSdMm", limits.armSdMm, defaults?.armSdMm),
    carerLogSd: number(fields, "carerLogSd", limits.carerLogSd, defaults?.carerLogSd),
    build: {
      "very-thin": buildOf("very-thin"),
      thin: buildOf("thin"),
      average: buildOf("average"),
      heavy: buildOf("heavy"),
      "very-heavy": buildOf("very-heavy"),
    },
  };
}
