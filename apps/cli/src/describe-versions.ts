import { defaultBodyModel } from "@steelyard/core/body";
import { draftFormulary } from "@steelyard/formulary";
import { SOFTWARE_VERSION } from "./software-version.ts";

/** Software, body model and formulary, one a line. */
export function describeVersions(): string {
  const { version, signed } = draftFormulary;
  return [
    `steelyard ${SOFTWARE_VERSION}`,
    `body model ${defaultBodyModel().version}`,
    `formulary ${version} (${signed ? "signed" : "draft, not signed"})`,
  ].join("\n");
}
