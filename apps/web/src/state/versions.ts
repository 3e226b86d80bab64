import { defaultBodyModel } from "@steelyard/core/body";
import type { ChildReport } from "@steelyard/core/child";
import { version } from "../../package.json";
import { formularyIndex } from "./formulary-index.ts";

/** What is running here; stands on the screen whether there is a child or not. */
export const versions: ChildReport["versions"] = {
  software: version,
  model: defaultBodyModel().version,
  formulary: formularyIndex.version,
  formularySigned: formularyIndex.signed,
};
