import type { LookupQuantity, LookupRest, LookupStep, LookupUnit } from "../lookup/index.ts";
import { formatNumber, formatWeight } from "../units/index.ts";
import type { LookupCatalogue } from "./lookup-catalogue.ts";
import { ENGLISH_VALUES } from "./value-words.ts";
import { writeAge } from "./write-age.ts";
import { writeEdges } from "./write-edges.ts";
import { writeLookupValue, writeQuantity, writeSpan, writeTubeMm } from "./write-lookup.ts";

const PER_MINUTE = "per\u00a0minute";

const QUANTITY: Readonly<Record<LookupQuantity, string>> = {
  age: "age",
  length: "length",
  "total-weight": "total weight",
  "ideal-weight": "ideal weight",
  arm: "arm circumference",
  tube: "the tube",
};

const REST: Readonly<Record<LookupRest, string>> = {
  age: "age",
  "height-age": "height-age",
  length: "length",
  "total-weight": "total weight",
  "ideal-weight": "ideal weight",
  arm: "arm circumference",
};

const BOUND = { "at-least": "at least ", "at-most": "at most " } as const;

function size(value: number, unit: LookupUnit): string {
  return unit === "mm" ? writeTubeMm(value) : writeLookupValue({ value, unit, perMinute: PER_MINUTE });
}

function exact(value: number, unit: LookupUnit): string {
  return writeLookupValue({ value, unit, perMinute: PER_MINUTE });
}

/** "age 4 years ÷ 4 + 3.5": what is done to the number, in order. */
function sum({ by, value, times, over, plus }: Extract<LookupStep, { step: "linear" }>): string {
  const start = by === "age" ? `${formatNumber(value)}\u00a0years` : writeQuantity(by, value);
  const factor = times === undefined ? "" : ` × ${formatNumber(times)}`;
  const divisor = over === undefined ? "" : ` ÷ ${formatNumber(over)}`;
  const addend = plus === undefined ? "" : ` + ${formatNumber(plus)}`;
  return `${QUANTITY[by]} ${start}${factor}${divisor}${addend}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The English words; the source that other languages are translated from. */
export const ENGLISH_LOOKUP: LookupCatalogue = {
  equipmentBlock: {
    title: "Equipment",
    lines: [
      "Sizes to start from, by published rules that nobody at this site has signed. Look at the child, and have the next sizes ready.",
    ],
  },
  signsBlock: {
    title: "Normal signs",
    lines: [
      "Published values of healthy children at rest, which nobody at this site has signed. A sick child is judged as a whole.",
    ],
  },
  item: {
    "tracheal-tube": "Tracheal tube",
    "tracheal-tube-depth": "Tracheal tube depth",
    "laryngoscope-blade": "Laryngoscope blade",
    "supraglottic-airway": "Supraglottic airway",
    "oropharyngeal-airway": "Oropharyngeal airway",
    "nasopharyngeal-airway": "Nasopharyngeal airway",
    mask: "Face mask",
    bag: "Self-inflating bag",
    "tidal-volume": "Tidal volume",
    "ventilation-rate": "Ventilation rate",
    "suction-catheter": "Suction catheter",
    "gastric-tube": "Gastric tube",
    "chest-drain": "Chest drain",
    "urinary-catheter": "Urinary catheter",
    cannula: "Cannula",
    "intraosseous-needle": "Intraosseous needle",
    "blood-pressure-cuff": "Blood-pressure cuff",
    "defibrillator-pads": "Defibrillator pads",
  },
  kind: {
    cuffed: "cuffed",
    uncuffed: "uncuffed",
    oral: "oral, at the lips",
    nasal: "nasal, at the nostril",
    "mask-type": "first-generation mask type",
    "gel-type": "second-generation gel type",
    ventilator: "ventilator, at the start",
    "during-compressions": "tube in place during compressions",
  },
  word: {
    "round-mask": "round",
    "shaped-mask": "shaped to the face",
    "child-pads": "child",
    "adult-pads": "adult",
    "incisors-to-jaw-angle": "incisors to the angle of the jaw",
    "nostril-to-tragus": "nostril to the tragus",
  },
  note: {
    "cuff-pressure": "Measure the cuff pressure and keep it at 20 to 25\u00a0cmH₂O or less.",
    "confirm-position":
      "A depth is where to start: confirm by capnography, listening to both sides and X-ray.",
    "check-tissue-depth": "Choose by the depth of tissue at the site; more tissue needs the longer needle.",
    "intraosseous-site": "Powered driver; proximal tibia, 2\u00a0cm below the tuberosity.",
    "pads-apart":
      "Edges at least 2.5\u00a0cm apart; front and back of the chest if they would touch. Without child pads use adult pads.",
    "see-chest-rise": "Right when the chest just rises.",
    "end-expiratory-pressure": "Start with an end-expiratory pressure of 5\u00a0cmH₂O; adjust to effect.",
    "device-label-first": "The weight range printed on the device comes first.",
  },
  shape: { straight: "straight", curved: "curved" },
  sign: {
    "heart-rate": "Heart rate",
    "respiratory-rate": "Respiratory rate",
    "systolic-pressure": "Systolic pressure",
    "mean-pressure": "Mean arterial pressure",
    "blood-volume": "Blood volume",
    "urine-output": "Urine, at least",
  },
  signKind: { "lower-limit": "lower limit", "fifth-centile": "5th centile", median: "median" },
  rest: REST,
  because: {
    "age-known": "The age is known, so the rule by age stands first.",
    "length-measured":
      "The length is measured and fits short and tall children too, so its rule stands first.",
    "length-before-height-age":
      "The age is not known, so the rule by length stands first, before rules on a height-age.",
    "under-4-kg": "Under 4\u00a0kg the rule for newborns stands first.",
  },
  perMinute: PER_MINUTE,
  values: ENGLISH_VALUES,
  and: " and ",
  bladder: ({ width, lengthCm }) => `${width} wide, ${formatNumber(lengthCm)}\u00a0cm long`,
  rule: sum,
  step: {
    "height-age": ({ lengthCm, ageMonths, bound }) =>
      `Height-age: the median child of ${formatNumber(lengthCm)}\u00a0cm is ${bound ? BOUND[bound] : ""}${writeAge(ageMonths)} old.`,
    linear: (step) => `${capital(sum(step))} = ${exact(step.result, step.unit)}.`,
    band: ({ by, value, low, high }) =>
      `${capital(QUANTITY[by])} ${writeQuantity(by, value)} falls in the band ${writeEdges((edge) => writeQuantity(by, edge), low, high)}.`,
    held: ({ by, value, at }) =>
      `${capital(QUANTITY[by])} ${writeQuantity(by, value)} is past the end of the rule, ${writeQuantity(by, at)}, whose value is kept.`,
    size: ({ exact: from, to, result, unit }) =>
      to === "nearest"
        ? `${exact(from, unit)}: the nearest size is ${size(result, unit)}.`
        : `${exact(from, unit)}: the next size below is ${size(result, unit)}.`,
    "per-kg": ({ perKg, by, kg, result, unit }) =>
      `${writeSpan(perKg)}\u00a0${unit === "mL/h" ? "mL/kg/h" : `${unit}/kg`} × ${formatWeight(kg)} ${QUANTITY[by]} = ${writeLookupValue({ value: result, unit, perMinute: PER_MINUTE })}.`,
    "share-of-arm": ({ percent, armMm, result }) =>
      `${formatNumber(percent)}\u00a0% of the arm, ${formatNumber(armMm)}\u00a0mm, is ${formatNumber(result)}\u00a0cm.`,
    chosen: ({ because }) => ENGLISH_LOOKUP.because[because],
  },
  warning: {
    "height-age": ({ lengthCm, ageMonths, bound }) =>
      `Age not known: by height-age, ${bound ? BOUND[bound] : ""}${writeAge(ageMonths)}, the age at which the median child is ${formatNumber(lengthCm)}\u00a0cm long.`,
    "rules-differ": ({ low, high, unit }) =>
      `Published rules differ for this child: ${size(low, unit)} to ${size(high, unit)}.`,
    held: ({ by, at }) => `Past the end of the rule (${writeQuantity(by, at)}): its last value is shown.`,
    newborn: () => "Under 28 days old: an uncuffed tube is usual.",
    "deep-in-infants": () =>
      "In small infants this depth may bring the tip close to the carina: listen to both sides.",
    "bladder-misfit": ({ reads, percentOfArm }) =>
      `The nearest bladder is ${formatNumber(percentOfArm)}\u00a0% of the arm wide, not 40\u00a0%: the pressure reads too ${reads}.`,
    "below-fifth-centile": () => "From 12 years this limit lies below the 5th centile of healthy children.",
    "lighter-weight-used": ({ totalKg, idealKg }) =>
      `Counted on ideal weight, ${formatWeight(idealKg)}, as total weight, ${formatWeight(totalKg)}, is more than 20\u00a0% above it.`,
  },
  gap: {
    needs: ({ oneOf }) => `Needs ${oneOf.map((rest) => REST[rest]).join(" or ")}.`,
    "outside-rule": ({ by, value, low, high }) =>
      `${capital(QUANTITY[by])} ${writeQuantity(by, value)} is outside the rule (${writeEdges((edge) => writeQuantity(by, edge), low, high)}).`,
  },
};
