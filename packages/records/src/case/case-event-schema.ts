import * as v from "valibot";
import { type CaseEvent, eventFormat } from "./case-event.ts";
import { between, day, instant, lineId, name, positiveAmount, text, uuid } from "./primitives.ts";

const kg = between(0.2, 400);
const girthCm = between(5, 250);

const measurements = v.strictObject({
  lengthCm: v.optional(between(20, 250)),
  posture: v.optional(v.picklist(["lying", "half-sitting", "seated"])),
  people: v.optional(v.picklist([1, 2])),
  lengthReadings: v.optional(between(1, 9)),
  ulnaCm: v.optional(between(2, 60)),
  kneeHeightCm: v.optional(between(4, 80)),
  tibiaCm: v.optional(between(3, 70)),
  armMm: v.optional(between(40, 800)),
  armStepMm: v.optional(between(0.1, 10)),
  armReadings: v.optional(between(1, 9)),
  waistCm: v.optional(girthCm),
  thighCm: v.optional(girthCm),
  calfCm: v.optional(girthCm),
  headCm: v.optional(between(15, 80)),
  sex: v.optional(v.picklist(["m", "f"])),
  ageMonths: v.optional(between(0, 300)),
  build: v.optional(v.picklist(["very-thin", "thin", "average", "heavy", "very-heavy"])),
  carerKg: v.optional(kg),
  earlier: v.optional(v.strictObject({ kg, ageMonths: between(0, 300) })),
  scaleKg: v.optional(kg),
  missingLimb: v.optional(v.picklist(["hand", "forearm", "arm", "foot", "lower-leg", "leg"])),
  oedema: v.optional(v.boolean()),
  pregnant: v.optional(v.boolean()),
});

const estimate = v.pipe(
  v.strictObject({
    totalKg: kg,
    low95Kg: between(0.1, 600),
    high95Kg: between(0.1, 600),
    idealKg: v.optional(kg),
    rests: v.array(name),
  }),
  v.check(
    ({ low95Kg, totalKg, high95Kg }) => low95Kg <= totalKg && totalKg <= high95Kg,
    "must have its total within its range",
  ),
);

const given = v.strictObject({
  lineId,
  medicine: name,
  use: name,
  route: name,
  dose: v.strictObject({
    amount: positiveAmount,
    unit: v.picklist(["g", "mg", "microgram", "nanogram", "mmol", "unit", "mL", "puff", "J"]),
    per: v.optional(v.picklist(["kg", "m2", "mL", "puff", "min", "h", "kg/min", "kg/h"])),
  }),
  volume: v.optional(v.strictObject({ ml: positiveAmount, strength: name })),
});

const head = {
  format: v.literal(eventFormat),
  id: uuid,
  caseId: uuid,
  at: instant,
  by: v.optional(v.pipe(name, v.maxLength(40, "must have at most 40 characters"))),
  replaces: v.optional(uuid),
  versions: v.strictObject({
    software: name,
    model: name,
    formulary: name,
    formularySigned: v.boolean(),
    calibration: v.optional(name),
  }),
};

/** The shape of an event, with no word in it that the format does not know. */
export const caseEventSchema: v.GenericSchema<CaseEvent> = v.variant("type", [
  v.strictObject({
    ...head,
    type: v.literal("case-started"),
    code: v.pipe(v.string(), v.regex(/^[0-9A-Z]{2,4}(-[0-9A-Z]{2,4})*$/, "must be a code such as K47-2TP")),
  }),
  v.strictObject({ ...head, type: v.literal("measurement"), measurements }),
  v.strictObject({ ...head, type: v.literal("estimate"), estimate }),
  v.strictObject({ ...head, type: v.literal("dose-given"), given }),
  v.strictObject({ ...head, type: v.literal("later-weight"), kg, on: day }),
  v.strictObject({ ...head, type: v.literal("note"), text }),
  v.strictObject({
    ...head,
    type: v.literal("second-reading"),
    lengthCm: v.optional(between(20, 250)),
    armMm: v.optional(between(40, 800)),
  }),
  v.strictObject({ ...head, type: v.literal("closed") }),
  v.strictObject({ ...head, type: v.literal("deleted") }),
  v.strictObject({ ...head, type: v.literal("undo"), target: uuid }),
]) as unknown as v.GenericSchema<CaseEvent>;
