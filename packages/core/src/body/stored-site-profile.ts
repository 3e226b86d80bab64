import type { CalibrationAgreement } from "./calibrate-site.ts";
import type { SiteProfile } from "./site-profile.ts";

/** The name and version of the file that `steelyard calibrate` writes. */
export const siteProfileFormat = { format: "steelyard-site-profile", formatVersion: 1 } as const;

/** What a calibrated site is known by, wherever its calibration was used. */
export interface SiteIdentity {
  readonly name: string;
  /** Day the calibration was made, YYYY-MM-DD. */
  readonly createdOn: string;
  /** Of the rows it was made from, in a form that neither their order nor other columns change. */
  readonly rowsSha256: string;
  /** Whether a licensed professional of the site has signed it. */
  readonly signed: boolean;
}

/** Rows that were not used, by reason. */
export interface LeftOutRows {
  readonly reason: string;
  readonly rows: number;
}

/** What the calibration was made from and what it changes. Agreement in %, as `calibrateSite` gives it. */
export interface SiteEvidence {
  readonly children: number;
  readonly leftOut: readonly LeftOutRows[];
  /** Days of the first and the last row, where the rows have dates. */
  readonly dates?: { readonly from: string; readonly to: string };
  readonly before: CalibrationAgreement;
  readonly after: CalibrationAgreement;
  readonly shiftWithinPercent: number;
  readonly childrenForOnePercent: number;
}

/** A site profile read back from its file, ready for `estimateWeight`. */
export interface StoredSiteProfile extends SiteProfile {
  readonly identity: SiteIdentity;
  readonly modelVersion: string;
  readonly evidence: SiteEvidence;
}
