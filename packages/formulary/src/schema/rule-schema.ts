import type {
  AgeBandRule,
  Basis,
  Dose,
  DoseUnit,
  InfusionAgeBandRule,
  InfusionRule,
  Rule,
  SimpleRule,
  TieredRateRule,
  WeightBandRule,
} from "@steelyard/core/dosing";
import * as v from "valibot";
import { citations } from "./citation-schema.ts";
import { notNegative, positive, text } from "./primitives.ts";

export const doseUnit: v.GenericSchema<unknown, DoseUnit> = v.picklist([
  "g",
  "mg",
  "microgram",
  "nanogram",
  "mmol",
  "unit",
  "mL",
  "puff",
  "J",
]);
export const basis: v.GenericSchema<unknown, Basis> = v.picklist(["total", "ideal", "adjusted", "lean"]);
export const dose: v.GenericSchema<unknown, Dose> = v.strictObject({ amount: positive, unit: doseUnit });

const accepted = v.exactOptional(v.strictObject({ lowPerKg: positive, highPerKg: positive, citations }));
const expressedAs = v.exactOptional(text);
const limits = { maximum: v.exactOptional(dose), minimum: v.exactOptional(dose) };

const simple = v.variant("kind", [
  v.strictObject({
    kind: v.literal("per-kg"),
    amountPerKg: positive,
    unit: doseUnit,
    basis,
    shareOfExcess: v.exactOptional(positive),
    perBurnPercent: v.exactOptional(v.strictObject({ fromPercent: positive })),
    accepted,
    expressedAs,
    ...limits,
  }),
  v.strictObject({
    kind: v.literal("per-m2"),
    amountPerM2: positive,
    unit: doseUnit,
    expressedAs,
    ...limits,
  }),
  v.strictObject({ kind: v.literal("fixed"), amount: positive, unit: doseUnit, accepted, expressedAs }),
]) satisfies v.GenericSchema<unknown, SimpleRule>;

export const simpleRule: v.GenericSchema<unknown, SimpleRule> = simple;

const ageBands = v.strictObject({
  kind: v.literal("age-bands"),
  bands: v.pipe(
    v.array(v.strictObject({ lowMonths: notNegative, highMonths: v.exactOptional(positive), rule: simple })),
    v.minLength(1, "has no band"),
  ),
  whenAgeUnknown: v.exactOptional(simple),
}) satisfies v.GenericSchema<unknown, AgeBandRule>;

const weightBands = v.strictObject({
  kind: v.literal("weight-bands"),
  basis,
  bands: v.pipe(
    v.array(v.strictObject({ lowKg: notNegative, highKg: v.exactOptional(positive), rule: simple })),
    v.minLength(1, "has no band"),
  ),
}) satisfies v.GenericSchema<unknown, WeightBandRule>;

const infusion = v.strictObject({
  kind: v.literal("infusion"),
  unit: doseUnit,
  per: v.picklist(["min", "h"]),
  basis,
  startPerKg: positive,
  lowPerKg: positive,
  highPerKg: positive,
  stepPerKg: v.exactOptional(positive),
  maximum: v.exactOptional(dose),
  expressedAs,
}) satisfies v.GenericSchema<unknown, InfusionRule>;

const infusionAgeBands = v.strictObject({
  kind: v.literal("infusion-age-bands"),
  bands: v.pipe(
    v.array(
      v.strictObject({ lowMonths: notNegative, highMonths: v.exactOptional(positive), rule: infusion }),
    ),
    v.minLength(1, "has no band"),
  ),
  whenAgeUnknown: v.exactOptional(infusion),
}) satisfies v.GenericSchema<unknown, InfusionAgeBandRule>;

const tieredRate = v.strictObject({
  kind: v.literal("tiered-rate"),
  unit: v.literal("mL"),
  per: v.literal("h"),
  basis,
  tiers: v.pipe(
    v.array(v.strictObject({ upToKg: v.exactOptional(positive), perKg: positive })),
    v.minLength(1, "has no tier"),
  ),
  maximum: v.exactOptional(dose),
}) satisfies v.GenericSchema<unknown, TieredRateRule>;

/** A dose of fluid: anything but an infusion. */
export const doseRule: v.GenericSchema<unknown, SimpleRule | AgeBandRule | WeightBandRule> = v.variant(
  "kind",
  [simple, ageBands, weightBands],
);

export const rule: v.GenericSchema<unknown, Rule> = v.variant("kind", [
  simple,
  ageBands,
  weightBands,
  infusion,
  infusionAgeBands,
  tieredRate,
]);
