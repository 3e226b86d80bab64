import type { MissingLimb, SlipChange, SlipUnit } from "../body/index.ts";
import type { ProblemId } from "../dosing/index.ts";
import { FIELD_UNIT, isAge, type QuantityField, type UnitSymbol } from "../entry/index.ts";
import type { FieldName, MessageCatalogue } from "./message-catalogue.ts";
import { writeMeasurement, writeRange, writeValue } from "./write-value.ts";

const FIELD: Readonly<Record<FieldName, string>> = {
  lengthCm: "length",
  standingHeightCm: "standing height",
  armMm: "arm circumference",
  waistCm: "waist circumference",
  thighCm: "thigh circumference",
  calfCm: "calf circumference",
  headCm: "head circumference",
  ageMonths: "age",
  carerKg: "weight stated by the carer",
  scaleKg: "scale weight",
  sex: "sex",
  posture: "posture",
  build: "build",
  people: "number of people measuring",
  lengthReadings: "number of length readings",
  ulnaCm: "ulna length",
  kneeHeightCm: "knee height",
  tibiaCm: "tibia length",
  armStepMm: "step of the arm tape",
  armReadings: "number of arm readings",
  earlier: "earlier weight",
  earlierKg: "earlier weight",
  earlierAgeMonths: "age at the earlier weight",
  missingLimb: "missing limb",
  oedema: "oedema",
  pregnant: "pregnancy",
};

const LIMB: Readonly<Record<MissingLimb, string>> = {
  hand: "hand",
  forearm: "forearm and hand",
  arm: "arm",
  foot: "foot",
  "lower-leg": "lower leg and foot",
  leg: "leg",
};

const UNIT: Readonly<Record<UnitSymbol, string>> = {
  mm: "mm",
  cm: "cm",
  m: "m",
  in: "in",
  ft: "ft",
  g: "g",
  kg: "kg",
  oz: "oz",
  lb: "lb",
  d: "days",
  w: "weeks",
  mo: "months",
  y: "years",
};

const UNIT_IN_FULL: Readonly<Record<SlipUnit, string>> = {
  mm: "millimetres",
  cm: "centimetres",
  m: "metres",
  in: "inches",
  ft: "feet",
  g: "grams",
  lb: "pounds",
  mo: "months",
  y: "years",
};

const PROBLEM: Readonly<Record<ProblemId, string>> = {
  arrest: "Arrest",
  airway: "Airway",
  seizure: "Seizure",
  shock: "Shock",
  anaphylaxis: "Anaphylaxis",
  infection: "Infection",
  bleeding: "Bleeding",
  "salts-and-sugar": "Salts and sugar",
  breathing: "Breathing",
  pain: "Pain and sedation",
  brain: "Raised intracranial pressure",
  fluids: "Fluids",
  poisoning: "Poisoning and reversal",
};

/** What to enter instead. */
const EXAMPLE: Readonly<Record<QuantityField, string>> = {
  lengthCm: "length in cm, such as 136",
  standingHeightCm: "standing height in cm, such as 135",
  ulnaCm: "ulna length in cm, such as 19",
  kneeHeightCm: "knee height in cm, such as 40",
  tibiaCm: "tibia length in cm, such as 31",
  armMm: "arm circumference in mm, such as 190",
  waistCm: "waist circumference in cm, such as 56",
  thighCm: "thigh circumference in cm, such as 35",
  calfCm: "calf circumference in cm, such as 26",
  headCm: "head circumference in cm, such as 44",
  ageMonths: "age with its unit, such as 9 y or 18 mo",
  carerKg: "weight in kg, such as 28",
  earlierKg: "weight in kg, such as 25",
  earlierAgeMonths: "age with its unit, such as 8 y or 16 mo",
  scaleKg: "weight in kg, such as 28",
};

/** The English sentences; the source that other languages are translated from. */
export const ENGLISH: MessageCatalogue = {
  "field.name": ({ field }) => FIELD[field],
  "problem.name": ({ problem }) => PROBLEM[problem],
  "unit.name": ({ unit }) => UNIT[unit],

  "entry-issue.empty": ({ field }) => `No ${FIELD[field]} was entered.`,
  "entry-issue.not-a-number": ({ field, text }) =>
    `${quote(text)} is not a number: enter the ${EXAMPLE[field]}.`,
  "entry-issue.several-numbers": ({ field, text }) =>
    `${quote(text)} holds more than one number: enter one ${EXAMPLE[field]}.`,
  "entry-issue.ambiguous-separator": ({ field, text }) =>
    `${quote(text)} has two readings, with the comma as decimal mark or between thousands: enter the ${EXAMPLE[field]}, with a decimal point.`,
  "entry-issue.unit-missing": ({ field, text }) =>
    `${capital(FIELD[field])} ${quote(text)} has no unit: enter the ${EXAMPLE[field]}.`,
  "entry-issue.unit-unknown": ({ field, unit, accepted }) =>
    `${quote(unit)} is not a unit of ${FIELD[field]}: use ${list(accepted, "or")}.`,
  "entry-issue.not-positive": ({ field, value }) =>
    isAge(field)
      ? `${capital(FIELD[field])} cannot be negative: ${writeAge(value)} was entered.`
      : `${capital(FIELD[field])} must be more than 0\u00a0${FIELD_UNIT[field]}: ${writeMeasurement({ field, value })} was entered.`,
  "entry-issue.out-of-limits": ({ field, value, low, high }) =>
    isAge(field)
      ? `${capital(FIELD[field])} ${writeAge(value)} is outside what this tool is for: birth to ${writeAge(high)}.`
      : `${capital(FIELD[field])} ${writeMeasurement({ field, value })} cannot be right: every child's lies within ${writeRange({ field, low, high })}.`,
  "entry-issue.not-a-choice": ({ field, text, choices }) =>
    choices.includes("yes")
      ? `${quote(text)} does not say whether there is ${FIELD[field]}: use ${list(choices, "or")}.`
      : `${quote(text)} is no ${FIELD[field]}: use ${list(choices, "or")}.`,
  "entry-issue.fields-swapped": ({ lengthCm, armMm }) =>
    `Length ${writeMeasurement({ field: "lengthCm", value: lengthCm })} and arm circumference ${writeMeasurement({ field: "armMm", value: armMm })} cannot both be right: no child has so thin an arm. They may have changed places.`,

  "entry-notice.unit-converted": ({ field, text, value }) =>
    `${capital(FIELD[field])} ${quote(text)} was taken as ${writeMeasurement({ field, value })}.`,
  "entry-notice.length-from-height": ({ standingHeightCm, lengthCm }) =>
    `Lying length was taken as ${writeMeasurement({ field: "lengthCm", value: lengthCm })}: standing height ${writeMeasurement({ field: "lengthCm", value: standingHeightCm })} + 0.7\u00a0cm.`,
  "entry-notice.lengths-disagree": ({ lengthCm, standingHeightCm, differenceCm }) =>
    `Lying length ${writeMeasurement({ field: "lengthCm", value: lengthCm })} and standing height ${writeMeasurement({ field: "lengthCm", value: standingHeightCm })} disagree by ${writeMeasurement({ field: "lengthCm", value: differenceCm })} after adding 0.7 cm to the height; the lying length was used.`,
  "entry-notice.earlier-incomplete": ({ field, missing }) =>
    `${capital(FIELD[field])} was given but not used, as the ${FIELD[missing]} is missing.`,

  "did-you-mean": ({ proposals }) => `Did you mean ${list(proposals, "or")}?`,
  "proposal.unit": ({ field, typed, from, value }) =>
    isAge(field) || from === FIELD_UNIT[field]
      ? `${writeValue(typed)}\u00a0${UNIT[from]}`
      : `${writeValue(typed)}\u00a0${UNIT[from]} (${writeMeasurement({ field, value })})`,
  "proposal.swap": ({ lengthCm, armMm }) =>
    `length ${writeMeasurement({ field: "lengthCm", value: lengthCm })} and arm circumference ${writeMeasurement({ field: "armMm", value: armMm })}`,
  "proposal.values": ({ values }) =>
    list(
      values.map((value) => namedValue(value)),
      "and",
    ),

  "slip.unit": ({ changes, from }) =>
    `${unlikely(changes)}: ${changes.length === 1 ? "it" : "they"} may have been ${from === "mo" || from === "y" ? "given" : "read"} in ${UNIT_IN_FULL[from]}.`,
  "slip.decimal-point": ({ changes }) =>
    `${unlikely(changes)}: its decimal point or a nought may be out of place.`,
  "slip.digits-exchanged": ({ changes }) =>
    `${unlikely(changes)}: two of its digits may have changed places.`,
  "slip.fields-exchanged": ({ changes }) => `${unlikely(changes)}: they may have changed places.`,
  "slip.outlier": ({ changes }) =>
    `${unlikely(changes)} beside the other measurements, and no common slip explains it. Check it again.`,

  "body-issue.length-missing": () =>
    "Length is needed, or at least the age: nothing else alone gives a weight that can be relied on. Measure from crown to heel, lying flat.",
  "body-issue.segment-needs-age": ({ measurement }) =>
    `${capital(FIELD[measurement])} gives a length only together with the age: enter the age, or measure the length.`,
  "body-issue.segment-age-out-of-range": ({ measurement, ageMonths, low, high }) =>
    `${capital(FIELD[measurement])} gives a length from ${writeAge(low)} to ${writeAge(high)} of age only, and the age is ${writeAge(ageMonths)}. Measure the length.`,
  "body-issue.measurement-out-of-range": ({ measurement, value, low, high }) =>
    `${capital(FIELD[measurement])} ${writeMeasurement({ field: measurement, value })} is outside the range that the body model serves, ${writeRange({ field: measurement, low, high })}. Measure again, or weigh the child and enter the scale weight.`,

  "body-warning.measurement-extrapolated": ({ measurement, value, low, high }) => {
    const seen = `${writeRange({ field: measurement, low, high })}${measurement === "lengthCm" ? "" : " at this length"}`;
    return `${capital(FIELD[measurement])} ${writeMeasurement({ field: measurement, value })} is beyond what the body model has seen (${seen}): the weight is an extrapolation.`;
  },
  "body-warning.measurement-not-used": ({ measurement }) =>
    measurement === "earlier"
      ? "The earlier weight was given but not used: it needs the age now, and an age then that is not later."
      : `${capital(FIELD[measurement])} was given but not used: the body model has no data on it at this length.`,
  "body-warning.measurement-conflict": ({ measurement, value, low, high, outcome }) => {
    const what = capital(FIELD[measurement]);
    const done =
      outcome === "left-out"
        ? "it was left out. Measure again."
        : "one of the two is wrong, and the range covers both. Measure both again.";
    return value === undefined
      ? `${what} does not fit the other measurements: it was left out.`
      : `${what} ${writeMeasurement({ field: measurement, value })} does not fit the other measurements, which would expect ${writeRange({ field: measurement, low: rounded(low), high: rounded(high) })}: ${done}`;
  },
  "body-warning.measurement-set-aside": ({ measurement, because }) =>
    because === "oedema"
      ? `${capital(FIELD[measurement])} was left out, as oedema adds to it.`
      : `${capital(FIELD[measurement])} was left out, as pregnancy adds to it.`,
  "body-warning.usual-weight": ({ because }) =>
    because === "oedema"
      ? "Oedema: the estimate is of the weight without the fluid."
      : "Pregnancy: the estimate is of the weight before it.",
  "body-warning.missing-limb": ({ limb, share }) =>
    `The missing ${LIMB[limb]} was taken off as ${writeValue(100 * share)}\u00a0% of the body, by adult figures.`,
  "body-warning.length-from-segment": ({ measurement, lengthCm, sdCm }) =>
    `Length was worked out from ${FIELD[measurement]} as ${writeMeasurement({ field: "lengthCm", value: Math.round(lengthCm * 10) / 10 })}, with a standard error of ${writeMeasurement({ field: "lengthCm", value: sdCm })}.`,
  "body-warning.no-length": () =>
    "No length: the weight goes by age, the range is wide, and no ideal weight can be given. Measure the length as soon as you can.",
  "body-warning.no-girth": () =>
    "No circumference was given: build is unknown and the range is wide. Measuring the arm narrows it.",
  "body-warning.scale-weight-unlikely": ({ scaleKg, low, high }) =>
    `Scale weight ${writeMeasurement({ field: "scaleKg", value: scaleKg })} is unlikely for these measurements, which predict ${writeRange({ field: "scaleKg", low, high })}. Check the scale, its unit and the measurements.`,

  "rests.estimated": ({ rests }) =>
    `Estimated from ${list(
      rests.map((name) => FIELD[name]),
      "and",
    )}.`,
  "rests.scale": () => "Read from the scale.",

  "caution.title": () => "Caution",
  "caution.decision-support": () => "This is decision support for trained clinicians.",
  "caution.weigh": () => "Weigh the child as soon as you can.",
  "caution.local-guidelines": () => "Local guidelines and a licensed professional's judgement come first.",
  "caution.check-doses": () => "Check every dose independently.",
  "caution.not-a-device": () => "Not a certified medical device.",

  "draft.title": () => "Draft formulary, not signed",
  "draft.text": () =>
    "No licensed pharmacist or physician has reviewed these doses. Do not give any of them before checking it against your own formulary.",
};

/** "Arm circumference 19 mm is unlikely", "Length 190 cm and arm circumference 136 mm are unlikely". */
function unlikely(changes: readonly SlipChange[]): string {
  const named = changes.map(({ measurement, given }) => namedValue({ field: measurement, value: given }));
  return `${capital(list(named, "and"))} ${named.length === 1 ? "is" : "are"} unlikely`;
}

/** "arm circumference 190 mm", "age 9 years". */
function namedValue({ field, value }: { readonly field: QuantityField; readonly value: number }): string {
  return `${FIELD[field]} ${isAge(field) ? writeAge(value) : writeMeasurement({ field, value })}`;
}

/** "9 years", "18 months", "300 months". */
function writeAge(ageMonths: number): string {
  const years = ageMonths / 12;
  return Number.isInteger(years) && years >= 2
    ? `${years}\u00a0years`
    : `${writeValue(ageMonths)}\u00a0months`;
}

/** Typed text between quotation marks, cut where it is too long to be read at a glance. */
function quote(text: string): string {
  const characters = [...text];
  return `"${characters.length > 40 ? `${characters.slice(0, 40).join("")}…` : text}"`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** "a", "a or b", "a, b or c". */
function list(items: readonly string[], word: "and" | "or"): string {
  return items.length < 2 ? items.join("") : `${items.slice(0, -1).join(", ")} ${word} ${items.at(-1)}`;
}

/** To a tenth: what is expected of a child is known no better. */
function rounded(value: number): number {
  return Math.round(10 * value) / 10;
}
