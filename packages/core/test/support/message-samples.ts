import type { Language } from "@steelyard/core/wording";

type Values = Readonly<Record<string, unknown>>;
type Catalogues = Pick<Language, "messages" | "dosing" | "lookup" | "site">;

const dose = { amount: 1234.5, unit: "mg" };
const perKg = { amount: 2.5, unit: "mg", per: "kg" };
const strength = { amountPerMl: 0.5, unit: "mg" };

/** What a message may ask for, by name; a name that stands for different things has its own value at its place below. */
const common: Values = {
  field: "armMm",
  measurement: "armMm",
  missing: "ageMonths",
  problem: "shock",
  text: "xq1",
  unit: "kg",
  accepted: ["mm", "cm", "m"],
  choices: ["xq1", "xq2"],
  value: 136.5,
  low: 1.5,
  high: 20.25,
  lengthCm: 134.5,
  standingHeightCm: 133.8,
  differenceCm: 2.5,
  armMm: 190.5,
  proposals: ["xq1", "xq2", "xq3"],
  typed: 19.5,
  from: "cm",
  values: [
    { field: "lengthCm", value: 136.5 },
    { field: "ageMonths", value: 18.5 },
  ],
  changes: [{ measurement: "armMm", given: 19.5, meant: 195 }],
  ageMonths: 30.5,
  because: "oedema",
  limb: "forearm",
  share: 0.0165,
  sdCm: 3.9,
  scaleKg: 28.4,
  outcome: "left-out",
  rests: ["lengthCm", "armMm", "ageMonths"],
  by: "weight",
  basis: "ideal",
  fromKg: 30.5,
  toKg: 28.1,
  totalKg: 28.1,
  idealKg: 30.5,
  kg: 28.1,
  lowKg: 3.5,
  highKg: 40.5,
  lowMonths: 6.5,
  highMonths: 30,
  perKg,
  perM2: { amount: 500, unit: "mg", per: "m2" },
  surfaceM2: 1.035,
  dose,
  result: dose,
  limit: "single-maximum",
  strength,
  concentration: strength,
  maximumConcentration: strength,
  ml: 0.15,
  measurableMl: 0.5,
  takeMl: 1.5,
  addMl: 8.5,
  totalMl: 10.5,
  diluent: "xq1",
  exactMl: 2.8125,
  markMl: 0.1,
  syringeMl: 5,
  byRule: undefined,
  errorPercent: -1.4,
  of: "xq1",
  burnPercent: 18,
  fromPercent: 10,
  overH: 8,
  perPercent: { amount: 54.9, unit: "mL" },
  perPuff: { amount: 100, unit: "microgram", per: "puff" },
  exactPuffs: 6.4,
  puffs: 6,
  maximumRate: { amount: 0.5, unit: "mg", per: "kg/min" },
  minutes: 7.5,
  parts: [
    { kg: 10, perKg: { amount: 4, unit: "mL", per: "kg/h" }, result: dose },
    { kg: 8.5, perKg: { amount: 2, unit: "mL", per: "kg/h" }, result: dose },
  ],
  exactMlPerH: 4.68,
  mlPerH: 4.7,
  allowanceMl: 60.5,
  sharePercent: 12.5,
  exactJ: 112.5,
  settingJ: 110,
  amount: dose,
  per: "min",
  aboveTolerance: false,
  leastMl: 2.5,
  totalDose: dose,
  idealDose: { amount: 0.5, unit: "mg" },
  for: "limit",
  reason: "xq1",
  probabilityOutside: 0.255,
  settledBy: { measurement: "waistCm", probabilityOutside: 0.004 },
  dosePerKg: perKg,
  lineId: "xq1",
  expectedUnit: "xq2",
  maximum: dose,
  total: dose,
  doses: 3,
  maximumDoses: 2,
  atMinutes: 2,
  earliestMinutes: 4.5,
  bound: "at-least",
  times: 2,
  over: 4.5,
  plus: 3.5,
  at: 5,
  exact: 6.5,
  percent: 40.5,
  oneOf: ["age", "length"],
  reads: "high",
  percentOfArm: 35.5,
  width: "xq1",
  children: 8,
  fewest: 20,
  leftOut: 1,
  within20: 45.5,
  least: 60.5,
  formatVersion: 12,
  profileModel: "xq1",
  currentModel: "xq2",
  expected: "xq1",
  girth: "xq1",
};

/** Further samples of a message: other branches of its sentence, and names that stand for something else there. */
const own: Readonly<Record<string, readonly Values[]>> = {
  "messages.entry-issue.out-of-limits": [{}, { field: "ageMonths", value: 360, low: 0, high: 240 }],
  "messages.entry-issue.not-positive": [{}, { field: "ageMonths", value: -1 }],
  "messages.entry-issue.not-a-choice": [{ field: "sex" }, { field: "oedema", choices: ["yes", "no"] }],
  "messages.proposal.unit": [{ from: "in" }, { field: "ageMonths", from: "y", typed: 9 }],
  "messages.slip.unit": [{}, { changes: [{ measurement: "ageMonths", given: 108 }], from: "y" }],
  "messages.body-warning.measurement-not-used": [{}, { measurement: "earlier" }],
  "messages.body-warning.measurement-conflict": [{}, { value: undefined }, { outcome: "xq" }],
  "messages.body-warning.measurement-set-aside": [{}, { because: "pregnant" }],
  "messages.body-warning.usual-weight": [{}, { because: "pregnant" }],
  "messages.body-warning.measurement-extrapolated": [{}, { measurement: "lengthCm" }],
  "dosing.step.band": [{}, { by: "age" }, { high: undefined }, { low: 0 }],
  "dosing.step.basis-swapped": [{ from: "ideal" }],
  "dosing.step.limit": [{ from: dose }, { from: dose, limit: "minimum" }],
  "dosing.step.weaker-strength": [{ from: strength, to: strength }],
  "dosing.step.dilution": [{ from: strength, to: strength }],
  "dosing.step.rounding": [{}, { byRule: true }, { syringeMl: undefined, errorPercent: 1.4 }],
  "dosing.step.shortest-time": [{}, { kg: undefined }],
  "dosing.step.fluid-rate": [{ perKg: { amount: 0.5, unit: "mL", per: "kg/min" } }],
  "dosing.step.preparation": [{}, { perKg: undefined, kg: undefined }],
  "dosing.step.preparation-left-out": [{}, { lowKg: undefined }],
  "dosing.step.puffs": [{}, { errorPercent: 0 }, { dose: { amount: 6, unit: "puff" }, errorPercent: 0 }],
  "dosing.step.rate": [{}, { errorPercent: 0, per: "h" }],
  "dosing.warning.limited": [
    { by: "single-maximum", from: dose, to: dose },
    { by: "minimum", from: dose, to: dose },
  ],
  "dosing.warning.rounded": [{}, { byRule: true }, { aboveTolerance: true }],
  "dosing.warning.diluted": [{ to: strength }],
  "dosing.warning.weaker-strength": [{ to: strength }],
  "dosing.warning.basis-swapped": [{ from: "ideal" }],
  "dosing.warning.age-needed": [{}, { for: "band" }, { for: "neonate" }, { reason: undefined }],
  "dosing.warning.neonate": [{ because: "age" }, { because: "weight" }],
  "dosing.warning.not-robust": [{}, { settledBy: undefined }],
  "dosing.unavailable.age-missing": [
    {
      choices: [
        { lowMonths: 0, highMonths: 6, dose },
        { lowMonths: 6, dose, volume: { ml: 2.5 } },
      ],
    },
  ],
  "dosing.unavailable.outside-bands": [{}, { by: "age" }],
  "dosing.unavailable.contraindicated": [{}, { by: "age", low: undefined }],
  "lookup.bladder": [{}],
  "lookup.rule": [{ by: "age", value: 4.5 }],
  "lookup.step.linear": [
    { by: "age", value: 4.5, result: 4.5, unit: "mm" },
    { by: "length", unit: "cm", result: 12.5 },
  ],
  "lookup.step.band": [{ by: "age" }, { by: "total-weight" }],
  "lookup.step.held": [{ by: "arm" }],
  "lookup.step.size": [
    { to: "nearest", result: 6, unit: "mm" },
    { to: "below", result: 8, unit: "Fr" },
  ],
  "lookup.step.per-kg": [
    { by: "total-weight", perKg: { low: 6.5, high: 8 }, result: { low: 170.5, high: 210 }, unit: "mL" },
    { by: "ideal-weight", perKg: 0.5, result: 14.5, unit: "mL/h" },
  ],
  "lookup.step.share-of-arm": [{ result: 6.4 }],
  "lookup.step.chosen": [{ because: "age-known" }],
  "lookup.warning.rules-differ": [{ unit: "mm" }, { unit: "/min" }, { unit: "size" }],
  "lookup.warning.held": [{ by: "tube" }],
  "lookup.warning.bladder-misfit": [{}, { reads: "low" }],
  "lookup.gap.outside-rule": [{ by: "total-weight" }, { by: "age", low: undefined }],
  "site.nextMeasurement": [{ percent: "40" }],
  "site.profile.unknown-format": [{}, { formatVersion: undefined }],
  "site.fault.out-of-range": [{}, { high: 1e12 }],
  "site.fault.unexpected": [{ value: "xq2" }],
};

const everyField = [
  "lengthCm",
  "standingHeightCm",
  "armMm",
  "waistCm",
  "thighCm",
  "calfCm",
  "headCm",
  "ageMonths",
  "carerKg",
  "scaleKg",
  "sex",
  "posture",
  "build",
  "people",
  "lengthReadings",
  "ulnaCm",
  "kneeHeightCm",
  "tibiaCm",
  "armStepMm",
  "armReadings",
  "earlier",
  "earlierKg",
  "earlierAgeMonths",
  "missingLimb",
  "oedema",
  "pregnant",
];
const everyProblem = [
  "arrest",
  "airway",
  "seizure",
  "shock",
  "anaphylaxis",
  "infection",
  "bleeding",
  "salts-and-sugar",
  "breathing",
  "pain",
  "brain",
  "fluids",
  "poisoning",
];
const everyUnit = ["mm", "cm", "m", "in", "ft", "g", "kg", "oz", "lb", "d", "w", "mo", "y"];
const everyLimb = ["hand", "forearm", "arm", "foot", "lower-leg", "leg"];

const lists: Readonly<Record<string, readonly Values[]>> = {
  "messages.field.name": everyField.map((field) => ({ field })),
  "messages.problem.name": everyProblem.map((problem) => ({ problem })),
  "messages.unit.name": everyUnit.map((unit) => ({ unit })),
  "messages.body-warning.missing-limb": everyLimb.map((limb) => ({ limb })),
};

/** A sentence for every sample of every message, and every word that is no function, by its place. */
export function renderAll(language: Catalogues): ReadonlyMap<string, string> {
  const rendered = new Map<string, string>();
  const walk = (node: unknown, place: string): void => {
    if (typeof node === "string") rendered.set(place, node);
    else if (typeof node === "function") {
      for (const [i, values] of (lists[place] ?? own[place] ?? [{}]).entries()) {
        const asked = strict({ ...common, ...values }, place);
        rendered.set(`${place}#${i}`, String((node as (values: Values) => unknown)(asked)));
      }
    } else if (typeof node === "object" && node !== null) {
      for (const [key, child] of Object.entries(node)) walk(child, `${place}.${key}`);
    }
  };
  for (const area of ["messages", "dosing", "lookup", "site"] as const) {
    const { values: _, ...words } = language[area] as unknown as Values;
    walk(words, area);
  }
  return rendered;
}

/** Asking for what no sample has is a fault of the samples, not an undefined in a sentence. */
function strict(values: Values, place: string): Values {
  return new Proxy(values, {
    get: (target, name) => {
      if (typeof name === "string" && !(name in target))
        throw new RangeError(`${place} asks for ${name}: add a sample`);
      return target[name as string];
    },
  });
}
