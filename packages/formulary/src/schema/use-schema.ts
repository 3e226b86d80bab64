import type {
  Administration,
  ApplicabilityLimit,
  DoseOption,
  ProblemId,
  Repeat,
  Route,
  Use,
  VolumeRounding,
} from "@steelyard/core/dosing";
import * as v from "valibot";
import { citations, note } from "./citation-schema.ts";
import { count, identifier, notNegative, positive, text } from "./primitives.ts";
import { dose, doseRule, rule, simpleRule } from "./rule-schema.ts";
import { preparation } from "./strength-schema.ts";

const option = v.strictObject({
  id: identifier,
  title: text,
  rule,
  further: v.exactOptional(v.array(simpleRule)),
  citations,
}) satisfies v.GenericSchema<unknown, DoseOption>;

const minutes = v.strictObject({ low: positive, high: positive });

const repeat = v.strictObject({
  maximumDoses: v.exactOptional(count),
  intervalMin: v.exactOptional(minutes),
  cumulativeMaximum: v.exactOptional(
    v.strictObject({
      perKg: v.exactOptional(dose),
      total: v.exactOptional(dose),
      byWeight: v.exactOptional(
        v.pipe(
          v.array(
            v.strictObject({
              lowKg: notNegative,
              highKg: v.exactOptional(positive),
              perKg: v.exactOptional(dose),
              total: v.exactOptional(dose),
            }),
          ),
          v.minLength(1, "has no band"),
        ),
      ),
      withinH: v.exactOptional(positive),
    }),
  ),
  text,
  citations,
}) satisfies v.GenericSchema<unknown, Repeat>;

const administration = v.strictObject({
  text,
  overMin: v.exactOptional(minutes),
  maximumRate: v.exactOptional(
    v.strictObject({
      amount: dose,
      perKg: v.boolean(),
      per: v.picklist(["min", "h"]),
      maximum: v.exactOptional(dose),
    }),
  ),
  portions: v.exactOptional(
    v.pipe(v.array(v.strictObject({ share: positive, overH: positive })), v.minLength(1, "has no part")),
  ),
  maximumConcentrationPerMl: v.exactOptional(dose),
  dilution: v.exactOptional(v.strictObject({ diluent: text, volume: doseRule, citations })),
  citations,
}) satisfies v.GenericSchema<unknown, Administration>;

const limitParts = { effect: v.picklist(["contraindicated", "caution"]), reason: text, citations };

const limit = v.variant("by", [
  v.strictObject({
    by: v.literal("age"),
    lowMonths: v.exactOptional(notNegative),
    highMonths: v.exactOptional(positive),
    passedAtKg: v.exactOptional(positive),
    ...limitParts,
  }),
  v.strictObject({
    by: v.literal("weight"),
    lowKg: v.exactOptional(notNegative),
    highKg: v.exactOptional(positive),
    ...limitParts,
  }),
]) satisfies v.GenericSchema<unknown, ApplicabilityLimit>;

const rounding = v.strictObject({
  toMl: positive,
  direction: v.picklist(["up", "down", "nearest"]),
  fromKg: v.exactOptional(positive),
  citations,
}) satisfies v.GenericSchema<unknown, VolumeRounding>;

const ROUTES = [
  "IV",
  "IO",
  "IM",
  "SC",
  "buccal",
  "intranasal",
  "oral",
  "rectal",
  "nebulised",
  "inhaled",
  "intratracheal",
  "external",
] as const satisfies readonly Route[];

export const problem: v.GenericSchema<unknown, ProblemId> = v.picklist([
  "arrest",
  "airway",
  "breathing",
  "seizure",
  "brain",
  "shock",
  "fluids",
  "anaphylaxis",
  "infection",
  "bleeding",
  "pain",
  "salts-and-sugar",
  "poisoning",
]);

export const use: v.GenericSchema<unknown, Use> = v.strictObject({
  id: identifier,
  title: text,
  problem,
  indication: text,
  routes: v.pipe(v.array(v.picklist(ROUTES)), v.minLength(1, "has no route")),
  options: v.pipe(v.array(option), v.minLength(1, "has no dose")),
  defaultOption: identifier,
  defaultReason: v.exactOptional(text),
  strengths: v.array(identifier),
  preparations: v.exactOptional(v.array(preparation)),
  rounding: v.exactOptional(rounding),
  repeat: v.exactOptional(repeat),
  administration,
  limits: v.array(limit),
  contraindications: v.array(note),
  cautions: v.array(note),
  monitoring: v.array(note),
  neonates: v.picklist(["covered", "not-covered"]),
});
