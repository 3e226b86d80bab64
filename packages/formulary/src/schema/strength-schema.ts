import type { Preparation, Strength } from "@steelyard/core/dosing";
import * as v from "valibot";
import { citations } from "./citation-schema.ts";
import { count, identifier, notNegative, positive, text } from "./primitives.ts";
import { doseUnit } from "./rule-schema.ts";

const liquid = v.strictObject({
  id: identifier,
  amountPerPuff: v.exactOptional(v.never()),
  amountPerMl: positive,
  unit: doseUnit,
  container: text,
  containerMl: positive,
  expressedAs: v.exactOptional(text),
  equivalents: v.exactOptional(
    v.array(v.strictObject({ expressedAs: text, amountPerMl: positive, unit: doseUnit, citations })),
  ),
  smallVolumeDilution: v.exactOptional(
    v.strictObject({ diluent: text, belowMl: v.exactOptional(positive), citations }),
  ),
  citations,
});

const inhaler = v.strictObject({
  id: identifier,
  amountPerPuff: positive,
  unit: doseUnit,
  container: text,
  containerPuffs: count,
  citations,
});

/** Told apart by how they count their contents, so that a fault is named in the shape that was meant. */
export const strength: v.GenericSchema<unknown, Strength> = v.variant("amountPerPuff", [inhaler, liquid]);

const preparationParts = { id: identifier, unit: doseUnit, totalMl: positive, diluent: text, citations };

export const preparation: v.GenericSchema<unknown, Preparation> = v.variant("kind", [
  v.strictObject({
    kind: v.literal("fixed"),
    amount: positive,
    lowKg: notNegative,
    highKg: v.exactOptional(positive),
    ...preparationParts,
  }),
  v.strictObject({
    kind: v.literal("per-kg"),
    amountPerKg: positive,
    lowKg: v.exactOptional(notNegative),
    highKg: v.exactOptional(positive),
    ...preparationParts,
  }),
]);
