import type { NextMeasurement } from "../body/index.ts";
import { formatNumber } from "../units/index.ts";
import { ENGLISH_SITE, type SiteCatalogue } from "./english-site.ts";

/**
 * What one more measurement would buy, as a sentence; the half-width to the whole percent.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { describeNextMeasurement } from "@steelyard/core/wording";
 * assert.match(
 *   describeNextMeasurement({ measurement: "waistCm", halfWidthPercent: 8.4 }),
 *   /^Measuring the waist would narrow the range to about ±8\s%\.$/,
 * );
 * ```
 */
export function describeNextMeasurement(
  { measurement, halfWidthPercent }: NextMeasurement,
  catalogue: SiteCatalogue = ENGLISH_SITE,
): string {
  const percent = formatNumber(Math.max(Math.round(halfWidthPercent), 1));
  return catalogue.nextMeasurement({ girth: catalogue.girth[measurement], percent });
}
