import {
  type BodyModel,
  type Build,
  estimateWeight,
  type Measurements,
  referenceSite,
  type SiteProfile,
} from "@steelyard/core/body";
import { percentError } from "../accuracy.ts";
import { type MeasuredChild, measureSet } from "../fit/measure-sets.ts";
import { normalRandom, seededRandom } from "../seeded-random.ts";
import { buildByEye } from "./build-by-eye.ts";
import { drawWeight } from "./draw-weight.ts";
import { whoWeightForLengthZ } from "./who-weight-for-length.ts";

/** A child with an estimate, its truth, and where both lie for the length by the WHO 2006 standard. */
export interface Placed {
  readonly trueZ: number;
  readonly estimateZ: number;
  /** (estimate - true) / true, %. */
  readonly error: number;
}

/** The ways to estimate that are compared, from least known to most. */
export const ways = {
  length: "length",
  build: "length + build by eye",
  arm: "length + arm + sex",
  armBuild: "length + arm + sex + build by eye",
  armOfWaist: "length + arm + sex, where a waist was measured",
  waist: "length + arm + sex + waist",
  /** Of these weights the model knows everything that can be known. */
  exact: "length + arm + sex, weights drawn from the model",
} as const;

export type Way = keyof typeof ways;

export interface Population<T extends MeasuredChild> {
  readonly children: readonly T[];
  readonly modelFor: (child: T) => BodyModel;
  readonly site: SiteProfile;
}

type SexedChild = MeasuredChild & { readonly sex: "m" | "f" };

/** Children whose sex is known and whose length the standard covers, estimated in every way and placed. */
export function placeChildren<T extends MeasuredChild>({
  children,
  modelFor,
  site,
}: Population<T>): Readonly<Record<Way, readonly Placed[]>> {
  const uniform = seededRandom(7919);
  const normal = normalRandom(seededRandom(20261125));
  const placed: Record<Way, Placed[]> = {
    length: [],
    build: [],
    arm: [],
    armBuild: [],
    armOfWaist: [],
    waist: [],
    exact: [],
  };
  for (const child of children) {
    if (!hasSex(child)) continue;
    const model = modelFor(child);
    const build = buildByEye({ model, child, normal });
    for (const way of Object.keys(placed) as Way[]) {
      const measurements = measure({ way, child, build });
      if (measurements === undefined) continue;
      const estimate = estimateWeight(measurements, { model, site: way === "exact" ? referenceSite : site });
      if (!estimate.ok) continue;
      const { totalKg: estimateKg, components } = estimate.value;
      const trueKg = way === "exact" ? drawWeight({ components, uniform, normal }) : child.weightKg;
      const trueZ = whoWeightForLengthZ({ ...child, weightKg: trueKg });
      const estimateZ = whoWeightForLengthZ({ ...child, weightKg: estimateKg });
      if (trueZ === undefined || estimateZ === undefined) continue;
      placed[way].push({ trueZ, estimateZ, error: percentError({ estimateKg, trueKg }) });
    }
  }
  return placed;
}

function hasSex<T extends MeasuredChild>(child: T): child is T & SexedChild {
  return child.sex !== undefined;
}

function measure(given: { way: Way; child: MeasuredChild; build: Build }): Measurements | undefined {
  const { way, child, build } = given;
  const lengthCm = measureSet("length").measure(child);
  const arm = measureSet("length + arm + sex").measure(child);
  const waist = measureSet("length + arm + sex + waist").measure(child);
  switch (way) {
    case "length":
      return lengthCm;
    case "build":
      return { ...lengthCm, build };
    case "arm":
    case "exact":
      return arm;
    case "armBuild":
      return arm === undefined ? undefined : { ...arm, build };
    case "armOfWaist":
      return waist === undefined ? undefined : arm;
    case "waist":
      return waist;
  }
}
