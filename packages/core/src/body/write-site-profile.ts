import type { Calibration, CalibrationAgreement } from "./calibrate-site.ts";
import {
  type LeftOutRows,
  type SiteEvidence,
  type SiteIdentity,
  siteProfileFormat,
} from "./stored-site-profile.ts";

/** What a calibration does not know of itself. */
export interface SiteRecord {
  readonly identity: SiteIdentity;
  readonly leftOut: readonly LeftOutRows[];
  readonly dates?: SiteEvidence["dates"];
  /** Name and version of what made it. */
  readonly software: string;
}

/**
 * A calibration as the JSON object of a site profile, which `readSiteProfile` reads back.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { calibrateSite, estimateWeight, readSiteProfile, writeSiteProfile } from "@steelyard/core/body";
 * import { centimetres } from "@steelyard/core/units";
 *
 * const rows = Array.from({ length: 30 }, (_, i) => {
 *   const measurements = { lengthCm: centimetres(70 + 3 * i) };
 *   const estimate = estimateWeight(measurements);
 *   assert.ok(estimate.ok);
 *   return { measurements, weightKg: estimate.value.totalKg * 1.1 };
 * });
 * const calibration = calibrateSite(rows);
 * assert.ok(calibration.ok);
 * const identity = { name: "Larch ward", createdOn: "2026-11-25", rowsSha256: "0".repeat(64), signed: false };
 * const file = writeSiteProfile(calibration.value, { identity, leftOut: [], software: "0.1.0" });
 * const read = readSiteProfile(JSON.parse(JSON.stringify(file)));
 * assert.ok(read.ok && read.value.population.shift === calibration.value.site.population.shift);
 * ```
 */
export function writeSiteProfile(
  calibration: Calibration,
  record: SiteRecord,
): Readonly<Record<string, unknown>> {
  const { site, modelVersion, children, before, after } = calibration;
  const { identity, leftOut, dates, software } = record;
  return {
    ...siteProfileFormat,
    site: identity.name,
    created: identity.createdOn,
    signed: identity.signed,
    software,
    model: modelVersion,
    population: site.population,
    errors: site.errors,
    evidence: {
      children,
      leftOut,
      ...(dates === undefined ? {} : { dates }),
      rowsSha256: identity.rowsSha256,
      before: agreement(before),
      after: agreement(after),
      shiftWithinPercent: calibration.shiftWithinPercent,
      childrenForOnePercent: calibration.childrenForOnePercent,
    },
  };
}

function agreement({
  meanError,
  within10,
  within20,
  coverage,
}: CalibrationAgreement): Readonly<Record<string, number>> {
  return {
    meanErrorPercent: meanError,
    within10Percent: within10,
    within20Percent: within20,
    coveragePercent: coverage,
  };
}
