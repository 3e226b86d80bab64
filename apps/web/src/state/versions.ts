import { defaultBodyModel } from "@steelyard/core/body";
import type { ChildReport } from "@steelyard/core/child";
import { draftFormulary } from "@steelyard/formulary";
import { version } from "../../package.json";

/** What is running here; stands on the screen whether there is a child or not. */
export const versions: ChildReport["versions"] = {
  software: version,
  model: defaultBodyModel().version,
  formulary: draftFormulary.version,
  formularySigned: draftFormulary.signed,
};
