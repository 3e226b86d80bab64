import manifest from "../../package.json" with { type: "json" };
import {
  adjustedWeight,
  type BodyIssue,
  type BodyModel,
  cumulativeWeight,
  defaultBodyModel,
  estimateWeight,
  idealWeight,
  leanWeight,
  type Measurements,
  type SiteIdentity,
  type SiteProfile,
  uncalibratedSite,
  type WeightEstimate,
} from "../body/index.ts";
import { computeSheet, type Formulary, type SettlingMeasurement, type Weights } from "../dosing/index.ts";
import { type Bladder, computeEquipment } from "../equipment/index.ts";
import { ok, type Result } from "../result.ts";
import { computeSigns } from "../signs/index.ts";
import type { ChildReport } from "./child-report.ts";

export interface ChildInput {
  readonly measurements: Measurements;
  readonly formulary: Formulary;
  /** Id of the dose option to compute in place of the default, by id of the line. */
  readonly choices?: Readonly<Record<string, string>>;
  /** The bladders of the site's blood-pressure cuffs; a usual set when absent. */
  readonly bladders?: readonly Bladder[];
  /** The body model to use; the one that ships when absent. */
  readonly model?: BodyModel;
  /** The site's calibration and what it is known by, as `readSiteProfile` gives it; an uncalibrated site when absent. */
  readonly site?: SiteProfile & { readonly identity?: SiteIdentity };
  /** What may still be measured, as `nextMeasurements` gives it: a dose in doubt names what settles it. */
  readonly settles?: readonly SettlingMeasurement[];
  /** What to call the software in `versions`; the version of this package when absent. */
  readonly versions?: { readonly software: string };
}

/**
 * Everything for one child: its weights in kg with what they rest on, the sheet of doses that follows, the sizes of
 * equipment and the normal signs.
 *
 * total = the scale weight, or the median that the body model gives the measurements; ideal, adjusted and lean weight
 * from length and total; then every use of the formulary on the weight of its basis, and equipment and signs by their
 * published rules.
 *
 * `measurements` as `estimateWeight` takes them; where there is no length, ideal, adjusted and lean weight are absent.
 * Returns a `BodyIssue` when no weight can be had; throws a `RangeError` on numbers that are not finite and on a
 * formulary that has not been validated.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { computeChild } from "@steelyard/core/child";
 * import { centimetres, millimetres } from "@steelyard/core/units";
 * import { draftFormulary } from "@steelyard/formulary";
 *
 * const measurements = { lengthCm: centimetres(136), armMm: millimetres(190) };
 * const report = computeChild({ measurements, formulary: draftFormulary });
 * assert.ok(report.ok && report.value.weight.low95Kg < 28 && report.value.weight.high95Kg > 28);
 * assert.ok(report.ok && report.value.sheet.some(({ id }) => id === "adrenaline.arrest"));
 * ```
 */
export function computeChild({
  measurements,
  formulary,
  choices,
  bladders,
  model = defaultBodyModel(),
  site = uncalibratedSite,
  settles,
  versions = { software: manifest.version },
}: ChildInput): Result<ChildReport, BodyIssue> {
  const estimate = estimateWeight(measurements, { model, site });
  if (!estimate.ok) return estimate;
  const { totalKg, low95Kg, high95Kg, lengthCm, rests, warnings } = estimate.value;
  const { ageMonths, sex } = measurements;
  const weights = weightsOf(estimate.value, measurements);
  const { cumulative: _, totalKg: __, ...others } = weights;
  const size = { ageMonths, sex, lengthCm, totalKg, idealKg: weights.idealKg };
  return ok({
    weight: { totalKg, low95Kg, high95Kg, ...others, rests },
    sheet: computeSheet({ formulary, weights, ageMonths, sex, lengthCm, choices, settles }),
    equipment: computeEquipment({ ...size, armMm: measurements.armMm, bladders }),
    signs: computeSigns(size),
    warnings,
    versions: {
      software: versions.software,
      model: model.version,
      formulary: formulary.version,
      formularySigned: formulary.signed,
      ...(site.identity === undefined ? {} : { site: site.identity }),
    },
  });
}

/** The weights that the dose rules may ask for; the distribution only where the total is an estimate. */
function weightsOf(estimate: WeightEstimate, { sex, ageMonths }: Measurements): Weights {
  const { totalKg, lengthCm, components } = estimate;
  const cumulative =
    components.length === 0 ? {} : { cumulative: (kg: number): number => cumulativeWeight(estimate, kg) };
  if (lengthCm === undefined) return { totalKg, ...cumulative };
  const leanKg = leanWeight({ totalKg, lengthCm });
  const ideal = idealWeight({ lengthCm, sex, ageMonths });
  if (!ideal.ok) return { totalKg, leanKg, ...cumulative };
  const idealKg = ideal.value;
  return { totalKg, idealKg, adjustedKg: adjustedWeight({ totalKg, idealKg }), leanKg, ...cumulative };
}
