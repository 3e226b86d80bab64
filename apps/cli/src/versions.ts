import { defaultBodyModel } from "@steelyard/core/body";
import { draftFormulary } from "@steelyard/formulary";
import manifest from "../package.json" with { type: "json" };

export const SOFTWARE_VERSION: string = manifest.version;

/** Software, body model and formulary, one a line. */
export function describeVersions(): string {
  const { version, signed } = draftFormulary;
  return [
    `steelyard ${SOFTWARE_VERSION}`,
    `body model ${defaultBodyModel().version}`,
    `formulary ${version} (${signed ? "signed" : "draft, not signed"})`,
  ].join("\n");
}
