import type { StoredSiteProfile } from "@steelyard/core/body";
import { versions } from "./versions.ts";

/** The calibration that weights are computed with: none where the one at hand was made for another body model. */
export function siteInUse(site: StoredSiteProfile | undefined): StoredSiteProfile | undefined {
  return site?.modelVersion === versions.model ? site : undefined;
}
