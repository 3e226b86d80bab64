import type { Dose } from "@steelyard/core/units";
import type { CaseEvent, CaseEventOf } from "./case-event.ts";
import { describeEvent } from "./case-text.ts";
import type { CaseRecord } from "./fold-case.ts";

type Json = Readonly<Record<string, unknown>>;

const loinc = "http://loinc.org";
const snomed = "http://snomed.info/sct";
const ucum = "http://unitsofmeasure.org";

interface Code {
  readonly text: string;
  readonly system?: string;
  readonly code?: string;
  readonly display?: string;
}

/** `ours` unit and its UCUM code. @source ucum */
const ucumOf: Readonly<Record<Dose["unit"], string>> = {
  g: "g",
  mg: "mg",
  microgram: "ug",
  nanogram: "ng",
  mmol: "mmol",
  // Units of a medicine are arbitrary: which ones, the medicine says.
  unit: "[arb'U]",
  mL: "mL",
  puff: "{puff}",
  J: "J",
};

/**
 * What is measured, and its code. Girths without a code that says neither side nor another technique have words only.
 *
 * @source loinc
 * @source snomed-ct
 */
const observationCodes: Readonly<Record<string, Code & { readonly unit: string }>> = {
  lengthCm: {
    text: "Lying length",
    system: loinc,
    code: "8306-3",
    display: "Body height --lying",
    unit: "cm",
  },
  armMm: {
    text: "Mid-upper-arm circumference, side not stated",
    system: snomed,
    code: "284473002",
    display: "Mid upper arm circumference",
    unit: "mm",
  },
  waistCm: { text: "Waist circumference", unit: "cm" },
  thighCm: { text: "Thigh circumference, side not stated", unit: "cm" },
  calfCm: { text: "Calf circumference, side not stated", unit: "cm" },
  headCm: { text: "Head circumference", unit: "cm" },
  ulnaCm: { text: "Length of the forearm bone (ulna)", unit: "cm" },
  kneeHeightCm: { text: "Knee height", unit: "cm" },
  tibiaCm: { text: "Length of the shin bone (tibia)", unit: "cm" },
  carerKg: {
    text: "Weight stated by the carer",
    system: loinc,
    code: "3142-7",
    display: "Body weight Stated",
    unit: "kg",
  },
  scaleKg: {
    text: "Weight read from a scale",
    system: loinc,
    code: "3141-9",
    display: "Body weight Measured",
    unit: "kg",
  },
};
const estimatedWeight: Code = {
  text: "Weight estimated from body measurements",
  system: loinc,
  code: "8335-2",
  display: "Body weight Estimated",
};
const idealWeight: Code = { text: "Ideal weight: median weight for length" };

/**
 * A case as a FHIR R4 bundle of the type `collection`: a patient without a name, observations with UCUM units, doses as
 * medication administrations, shocks as procedures.
 *
 * What was taken back is there with the status `entered-in-error`. The id of an event is the id of its resource, so that
 * a second export of the same case brings nothing new.
 *
 * @source fhir-r4
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { fhirBundle, foldCase } from "@steelyard/records/case";
 *
 * const versions = { software: "0.1.0", model: "m", formulary: "f", formularySigned: false };
 * const id = "00000000-0000-4000-8000-000000000001";
 * const head = { format: 1, id, caseId: id, at: "2026-11-25T03:12:00.000Z", versions } as const;
 * const bundle = fhirBundle(foldCase([{ ...head, type: "case-started", code: "K47-2TP" }]));
 * assert.equal(bundle.resourceType, "Bundle");
 * ```
 */
export function fhirBundle(record: CaseRecord): Json {
  const { caseId, code, measurement, history, startedAt } = record;
  const subject = { reference: `urn:uuid:${caseId}` };
  const sex = measurement?.measurements.sex;
  const patient: Json = {
    resourceType: "Patient",
    id: caseId,
    identifier: [{ type: { text: "Case code" }, value: code === "" ? caseId : code }],
    ...(sex && { gender: sex === "f" ? "female" : "male" }),
  };
  const resources = history.flatMap(({ event, counts }) => resourcesOf(event, counts, subject));
  return {
    resourceType: "Bundle",
    type: "collection",
    timestamp: record.history.at(-1)?.event.at ?? startedAt,
    entry: [patient, ...resources].map((resource) => ({ fullUrl: `urn:uuid:${resource.id}`, resource })),
  };
}

function resourcesOf(event: CaseEvent, counts: boolean, subject: Json): readonly Json[] {
  switch (event.type) {
    case "measurement": {
      const quantities = Object.entries(event.measurements).filter(([name]) => name in observationCodes);
      return quantities.map(([name, value], i) =>
        observation({ event, counts, subject, name, value: value as number, id: idFor(event.id, i) }),
      );
    }
    case "second-reading":
      return (["lengthCm", "armMm"] as const).flatMap((name, i) => {
        const value = event[name];
        const id = idFor(event.id, i);
        return value === undefined
          ? []
          : [
              {
                ...observation({ event, counts, subject, name, value, id }),
                note: [{ text: "Read by a second person." }],
              },
            ];
      });
    case "estimate": {
      const { totalKg, low95Kg, high95Kg, idealKg } = event.estimate;
      const total = weight({ event, counts, subject, code: estimatedWeight, kg: totalKg, id: event.id });
      return [
        {
          ...total,
          component: [
            { code: { text: "Lower end of the 95 % range" }, valueQuantity: quantity(low95Kg, "kg") },
            { code: { text: "Upper end of the 95 % range" }, valueQuantity: quantity(high95Kg, "kg") },
          ],
          method: { text: versionsText(event) },
        },
        ...(idealKg === undefined
          ? []
          : [weight({ event, counts, subject, code: idealWeight, kg: idealKg, id: idFor(event.id, 1) })]),
      ];
    }
    case "later-weight": {
      const measured = observationCodes.scaleKg ?? idealWeight;
      const resource = weight({ event, counts, subject, code: measured, kg: event.kg, id: event.id });
      return [{ ...resource, effectiveDateTime: event.on }];
    }
    case "dose-given":
      return [dose(event, counts, subject)];
    case "case-started":
    case "note":
    case "closed":
    case "deleted":
    case "undo":
      return [];
  }
}

interface Common {
  readonly event: CaseEvent;
  readonly counts: boolean;
  readonly subject: Json;
  readonly id: string;
}

function observation({
  name,
  value,
  ...common
}: Common & { readonly name: string; readonly value: number }): Json {
  const code = observationCodes[name];
  if (code === undefined) throw new RangeError(`Cannot export ${name} as it must be a quantity`);
  return { ...base(common, code), valueQuantity: quantity(value, code.unit) };
}

function weight({ code, kg, ...common }: Common & { readonly code: Code; readonly kg: number }): Json {
  return { ...base(common, code), valueQuantity: quantity(kg, "kg") };
}

function base({ event, counts, subject, id }: Common, code: Code): Json {
  return {
    resourceType: "Observation",
    id,
    status: counts ? "final" : "entered-in-error",
    category: [
      {
        coding: [
          { system: "http://terminology.hl7.org/CodeSystem/observation-category", code: "vital-signs" },
        ],
      },
    ],
    code: concept(code),
    subject,
    effectiveDateTime: event.at,
    ...(event.by !== undefined && { performer: [{ display: event.by }] }),
  };
}

function dose(event: CaseEventOf<"dose-given">, counts: boolean, subject: Json): Json {
  const { medicine, use, route, dose: given, volume } = event.given;
  const performer = event.by === undefined ? {} : { performer: [{ actor: { display: event.by } }] };
  const note = [{ text: versionsText(event) }];
  const status = counts ? "completed" : "entered-in-error";
  if (given.unit === "J") {
    return {
      resourceType: "Procedure",
      id: event.id,
      status,
      code: { text: eventText(event) },
      subject,
      performedDateTime: event.at,
      ...performer,
      note,
    };
  }
  const per = given.per === undefined ? {} : { rateQuantity: perQuantity(given) };
  return {
    resourceType: "MedicationAdministration",
    id: event.id,
    status,
    medicationCodeableConcept: { text: volume === undefined ? medicine : `${medicine} ${volume.strength}` },
    subject,
    effectiveDateTime: event.at,
    ...performer,
    reasonCode: [{ text: use }],
    dosage: {
      text: eventText(event),
      route: { text: route },
      ...(given.per === undefined ? { dose: quantity(given.amount, ucumOf[given.unit]) } : per),
    },
    note,
  };
}

/** A dose per kg and time: UCUM writes it with the same strokes. */
function perQuantity({ amount, unit, per = "h" }: Dose): Json {
  return quantity(amount, `${ucumOf[unit]}/${per}`);
}

function quantity(value: number, code: string): Json {
  return { value, unit: code, system: ucum, code };
}

function concept({ text, system, code, display }: Code): Json {
  return { ...(system !== undefined && { coding: [{ system, code, display }] }), text };
}

/** FHIR's strings take no space but the plain one. */
function eventText(event: CaseEvent): string {
  return describeEvent(event).replaceAll("\u00a0", " ");
}

function versionsText({ versions }: CaseEvent): string {
  const { software, model, formulary, formularySigned, calibration } = versions;
  const sign = formularySigned ? "signed" : "draft, not signed";
  const site = calibration === undefined ? "site not calibrated" : `calibration ${calibration}`;
  return `Steelyard ${software}, body model ${model}, formulary ${formulary} (${sign}), ${site}. Decision support, not a certified medical device.`;
}

/** An id for the further resources of one event: the same every time, and of a UUID's form (version 8, free use). @source rfc-9562 */
function idFor(id: string, index: number): string {
  return `${id.slice(0, 14)}8${(index + 1).toString(16).padStart(3, "0")}${id.slice(18)}`;
}
