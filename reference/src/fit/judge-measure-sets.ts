import { referenceSite } from "@steelyard/core/body";
import { type Judgement, judge } from "../judge.ts";
import type { HeldOutFit } from "./fit-and-hold-out.ts";
import type { FitChild } from "./fit-child.ts";
import { measureSets } from "./measure-sets.ts";

/** Every child of NHANES judged from every set of measurements it has, by the fit without its fold. */
export function judgeMeasureSets({
  selection,
  heldOut,
}: Pick<HeldOutFit, "selection" | "heldOut">): ReadonlyMap<string, Judgement<FitChild>> {
  return new Map(
    measureSets.map(({ name, measure }) => [
      name,
      judge({ children: selection.children, measure, modelFor: heldOut, site: referenceSite }),
    ]),
  );
}
