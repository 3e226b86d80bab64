import type { MeasurementName } from "../body/index.ts";
import { ENGLISH } from "./english.ts";
import type { MessageCatalogue } from "./message-catalogue.ts";

/**
 * What a weight rests on: "Estimated from length and arm circumference." or "Read from the scale."
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { describeRests } from "@steelyard/core/wording";
 * assert.equal(describeRests(["lengthCm", "armMm"]), "Estimated from length and arm circumference.");
 * assert.equal(describeRests(["scaleKg"]), "Read from the scale.");
 * ```
 */
export function describeRests(
  rests: readonly MeasurementName[],
  catalogue: MessageCatalogue = ENGLISH,
): string {
  return rests.includes("scaleKg") ? catalogue["rests.scale"]({}) : catalogue["rests.estimated"]({ rests });
}
