import { err, ok, type Result } from "../result.ts";
import { type CalibrationAgreement, fewestChildren } from "./calibrate-site.ts";
import { defaultBodyModel } from "./default-body-model.ts";
import { type FieldFault, type FieldReader, type Range, readFields } from "./read-fields.ts";
import { measurementErrorsOf } from "./read-measurement-errors.ts";
import { betweenPopulations, type PopulationShift } from "./site-profile.ts";
import { type SiteEvidence, type StoredSiteProfile, siteProfileFormat } from "./stored-site-profile.ts";

export type SiteProfileIssue =
  /** Not such a file at all, or of a later version of it. */
  | { readonly type: "unknown-format"; readonly formatVersion?: number }
  /** Shift and slope mean something only for the model they were found with. */
  | { readonly type: "other-model"; readonly profileModel: string; readonly currentModel: string }
  | { readonly type: "faulty"; readonly faults: readonly FieldFault[] };

export interface ReadSiteProfileOptions {
  /** Version of the body model it will be used with; of the one that ships when absent. */
  readonly modelVersion?: string;
}

/** A calibration shrinks towards none: further than five prior SDs it never comes. */
const shiftLimit = 5 * Math.sqrt(betweenPopulations.shift);
const slopeLimit = 5 * Math.sqrt(betweenPopulations.slope);
const percent: Range = [0, 100];
const many = 1e12;
/** Known better than by a thousand million children is not known but typed. */
const leastVariance = 1e-9;

/**
 * A site profile from the JSON that `steelyard calibrate` writes, checked field by field.
 *
 * Beyond the types it is checked that the numbers can come of a calibration: shift and slope within five SDs of their prior,
 * variances no larger than the prior's and positive definite, at least 20 children.
 *
 * Fails with `unknown-format`, with `other-model`, or with every fault and its place.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { readSiteProfile } from "@steelyard/core/body";
 *
 * const profile = readSiteProfile({ format: "steelyard-site-profile", formatVersion: 1, model: "0" });
 * assert.ok(!profile.ok && profile.error.type === "other-model");
 * ```
 */
export function readSiteProfile(
  value: unknown,
  { modelVersion = defaultBodyModel().version }: ReadSiteProfileOptions = {},
): Result<StoredSiteProfile, SiteProfileIssue> {
  const faults: FieldFault[] = [];
  const fields = readFields({ value, place: "", faults });
  if (!fields.exactly("format", siteProfileFormat.format)) return err({ type: "unknown-format" });
  const formatVersion = fields.whole("formatVersion", [1, many]);
  if (faults.length === 0 && formatVersion !== siteProfileFormat.formatVersion) {
    return err({ type: "unknown-format", formatVersion });
  }
  const profileModel = fields.text("model");
  if (profileModel !== "" && profileModel !== modelVersion) {
    return err({ type: "other-model", profileModel, currentModel: modelVersion });
  }
  const evidence = fields.object("evidence");
  const profile: StoredSiteProfile = {
    identity: {
      name: fields.text("site"),
      createdOn: fields.date("created"),
      rowsSha256: evidence.sha256("rowsSha256"),
      signed: fields.flag("signed"),
    },
    modelVersion: profileModel,
    population: populationOf(fields, faults),
    errors: measurementErrorsOf(fields.object("errors")),
    evidence: evidenceOf(evidence),
  };
  return faults.length > 0 ? err({ type: "faulty", faults }) : ok(profile);
}

/** Rows that say nothing of a slope leave its variance at the prior's, but for the last digits of the arithmetic. */
const rounded = 1 + 1e-9;

function populationOf(parent: FieldReader, faults: FieldFault[]): PopulationShift {
  const before = faults.length;
  const fields = parent.object("population");
  const variances = fields.object("variance");
  const largest = Math.sqrt(betweenPopulations.shift * betweenPopulations.slope);
  const variance = {
    shift: variances.number("shift", [leastVariance, betweenPopulations.shift * rounded]),
    slope: variances.number("slope", [leastVariance, betweenPopulations.slope * rounded]),
    covariance: variances.number("covariance", [-largest, largest]),
  };
  const high = Math.sqrt(variance.shift * variance.slope);
  const value = variance.covariance;
  if (faults.length === before && Math.abs(value) >= high) {
    const problem = { type: "out-of-range", value, low: -high, high } as const;
    faults.push({ place: "population.variance.covariance", problem });
  }
  return {
    shift: fields.number("shift", [-shiftLimit, shiftLimit]),
    slope: fields.number("slope", [-slopeLimit, slopeLimit]),
    variance,
    spread: fields.number("spread", [0.1, 10]),
  };
}

function evidenceOf(fields: FieldReader): SiteEvidence {
  const dates = fields.has("dates") ? fields.object("dates") : undefined;
  return {
    children: fields.whole("children", [fewestChildren, many]),
    leftOut: fields.list("leftOut").map((row) => ({
      reason: row.text("reason"),
      rows: row.whole("rows", [1, many]),
    })),
    ...(dates === undefined ? {} : { dates: { from: dates.date("from"), to: dates.date("to") } }),
    before: agreementOf(fields.object("before")),
    after: agreementOf(fields.object("after")),
    shiftWithinPercent: fields.number("shiftWithinPercent", [0, 1000]),
    childrenForOnePercent: fields.whole("childrenForOnePercent", [1, many]),
  };
}

function agreementOf(fields: FieldReader): CalibrationAgreement {
  return {
    meanError: fields.number("meanErrorPercent", [-100, many]),
    within10: fields.number("within10Percent", percent),
    within20: fields.number("within20Percent", percent),
    coverage: fields.number("coveragePercent", percent),
  };
}
