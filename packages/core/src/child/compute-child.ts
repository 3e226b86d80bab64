import manifest from "../../package.json" with { type: "json" };
import {
  type BodyIssue,
  type BodyModel,
  defaultBodyModel,
  type EstimatedChild,
  type Measurements,
  type SiteIdentity,
  type SiteProfile,
  weighChild,
} from "../body/index.ts";
import { computeSheet, type Formulary, type SettlingMeasurement } from "../dosing/index.ts";
import { type Bladder, computeEquipment } from "../equipment/index.ts";
import { ok, type Result } from "../result.ts";
import { computeSigns } from "../signs/index.ts";
import type { ChildReport } from "./child-report.ts";

export interface ChildInput extends SheetChoices {
  readonly measurements: Measurements;
}

/** What a sheet is made of beside the child. */
export interface SheetChoices {
  /** The body model to use; the one that ships when absent. */
  readonly model?: BodyModel;
  /** The site's calibration and what it is known by, as `readSiteProfile` gives it; an uncalibrated site when absent. */
  readonly site?: SiteProfile & { readonly identity?: SiteIdentity };
  readonly formulary: Formulary;
  /** Id of the dose option to compute in place of the default, by id of the line. */
  readonly choices?: Readonly<Record<string, string>>;
  /** Burnt share of the body surface, %, above 0 to 100, as `readBurnPercent` reads it; the fluid of burns goes by it. */
  readonly burnPercent?: number;
  /** The bladders of the site's blood-pressure cuffs; a usual set when absent. */
  readonly bladders?: readonly Bladder[];
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
  model,
  site,
  ...choices
}: ChildInput): Result<ChildReport, BodyIssue> {
  const child = weighChild({ measurements, ...(model && { model }), ...(site && { site }) });
  if (!child.ok) return child;
  return ok(
    computeReport({ child: child.value, ...choices, ...(model && { model }), ...(site && { site }) }),
  );
}

/**
 * Everything for a child that has been weighed already: the same as `computeChild`, without estimating the weight again.
 *
 * `child` as `weighChild` gives it, `model` and `site` those it was weighed with; they are named among the versions only.
 * Throws a `RangeError` on a formulary that has not been validated.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { weighChild } from "@steelyard/core/body";
 * import { computeChild, computeReport } from "@steelyard/core/child";
 * import { centimetres, millimetres } from "@steelyard/core/units";
 * import { draftFormulary } from "@steelyard/formulary";
 *
 * const measurements = { lengthCm: centimetres(136), armMm: millimetres(190) };
 * const child = weighChild({ measurements });
 * const whole = computeChild({ measurements, formulary: draftFormulary });
 * assert.ok(child.ok && whole.ok);
 * assert.deepEqual(computeReport({ child: child.value, formulary: draftFormulary }), whole.value);
 * ```
 */
export function computeReport({
  child: { measurements, estimate, weights },
  formulary,
  choices,
  burnPercent,
  bladders,
  model = defaultBodyModel(),
  site,
  settles,
  versions = { software: manifest.version },
}: SheetChoices & { readonly child: EstimatedChild }): ChildReport {
  const { totalKg, low95Kg, high95Kg, lengthCm, rests, warnings } = estimate;
  const { ageMonths, sex, armMm } = measurements;
  const { cumulative: _, totalKg: __, ...others } = weights;
  const size = { ageMonths, sex, lengthCm, totalKg, idealKg: weights.idealKg };
  return {
    weight: { totalKg, low95Kg, high95Kg, ...others, rests },
    sheet: computeSheet({ formulary, weights, ageMonths, sex, lengthCm, burnPercent, choices, settles }),
    equipment: computeEquipment({ ...size, armMm, bladders }),
    signs: computeSigns(size),
    warnings,
    versions: {
      software: versions.software,
      model: model.version,
      formulary: formulary.version,
      formularySigned: formulary.signed,
      ...(site?.identity === undefined ? {} : { site: site.identity }),
    },
  };
}
