import type { BodyModel } from "@steelyard/core/body";
import type { HeldOutFit } from "../fit/fit-and-hold-out.ts";
import { computeAccuracy } from "./compute-accuracy.ts";
import { drawFigures } from "./draw-figures.ts";
import { type Source, writeAccuracyPage } from "./write-accuracy-page.ts";

/** Everything `npm run accuracy` writes: the text of each file by its path within `docs`. */
export function writeAccuracy(given: {
  fit: HeldOutFit;
  /** The one that ships, whose shape is drawn. */
  model: BodyModel;
  /** The source registry. */
  sources: readonly Source[];
}): ReadonlyMap<string, string> {
  const results = computeAccuracy(given.fit, given.model);
  const page = writeAccuracyPage(results, given.sources);
  const figures = [...drawFigures(results)].map(([name, svg]) => [`figures/${name}`, svg] as const);
  return new Map([["accuracy.md", page], ...figures]);
}
