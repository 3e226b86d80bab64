import { defaultBodyModel, type StoredSiteProfile, uncalibratedSite } from "@steelyard/core/body";

/** An invented site whose children are heavier for their arm than those of the fit. */
export function calibratedSite({
  name = "Example Bay Hospital",
  signed = false,
  modelVersion = defaultBodyModel().version,
}: {
  readonly name?: string;
  readonly signed?: boolean;
  readonly modelVersion?: string;
} = {}): StoredSiteProfile {
  const agreement = { meanError: 0, within10: 70, within20: 95, coverage: 94 };
  return {
    identity: { name, createdOn: "2026-11-01", rowsSha256: "0".repeat(64), signed },
    modelVersion,
    population: {
      shift: 0.8,
      slope: 0.1,
      variance: { shift: 0.02, slope: 0.01, covariance: 0 },
      spread: 1.1,
    },
    errors: uncalibratedSite.errors,
    evidence: {
      children: 240,
      leftOut: [],
      before: agreement,
      after: agreement,
      shiftWithinPercent: 1.5,
      childrenForOnePercent: 400,
    },
  };
}
