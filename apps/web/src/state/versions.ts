import { defaultBodyModel } from "@steelyard/core/body";
import { version } from "../../package.json";
import type { BedsideState } from "./bedside-state.ts";
import { formularyIndex } from "./formulary-index.ts";
import type { RunningVersions } from "./site-rules.ts";

/** What runs here whatever the site has of its own. */
export const versions = { software: version, model: defaultBodyModel().version };

/** What is running here; stands on the screen whether there is a child or not. A calibration of another body model is not in use. */
export function versionsOf({ formulary, site }: Pick<BedsideState, "formulary" | "site">): RunningVersions {
  const { index = formularyIndex, own } = formulary ?? {};
  return {
    ...versions,
    formulary: index.version,
    formularySigned: index.signed,
    ...(own && { own }),
    ...(site?.modelVersion === versions.model && { site: site.identity }),
  };
}
