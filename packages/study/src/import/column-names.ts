import type { UnitSymbol } from "@steelyard/core/entry";
import type { StudyField } from "./study-field.ts";

/** Names that survey and hospital files give their columns, without the unit, lower case; CDC variable names among them. */
const NAMES: Readonly<Record<StudyField, readonly string[]>> = {
  weightKg: [
    "weight",
    "wt",
    "scale",
    "scale weight",
    "weight scale",
    "true weight",
    "measured weight",
    "weight measured",
    "actual weight",
    "body weight",
    "poids",
    "bmxwt",
  ],
  lengthCm: ["length", "len", "lying length", "recumbent length", "supine length", "longueur", "bmxrecum"],
  standingHeightCm: ["standing height", "height standing", "taille debout", "bmxht"],
  statureCm: ["height", "ht", "stature", "length height", "length or height", "lenhei", "taille"],
  armMm: [
    "arm",
    "muac",
    "mac",
    "arm circumference",
    "mid arm circumference",
    "mid upper arm circumference",
    "upper arm circumference",
    "perimetre brachial",
    "pb",
    "bmxarmc",
  ],
  waistCm: ["waist", "waist circumference", "tour de taille", "bmxwaist"],
  thighCm: ["thigh", "thigh circumference", "bmxthicr"],
  calfCm: ["calf", "calf circumference", "bmxcalf"],
  headCm: ["head", "head circumference", "hc", "perimetre cranien", "bmxhead"],
  ageMonths: ["age", "age in", "age exam", "age at exam", "ridexagm", "ridageex", "ridagemn", "ridageyr"],
  carerKg: ["carer", "carer weight", "stated weight", "parent weight", "weight stated", "parental estimate"],
  sex: ["sex", "gender", "sexe", "riagendr"],
  stance: ["position", "stance", "measured", "lying standing", "standing lying"],
  posture: ["posture"],
  build: ["build", "habitus"],
  oedema: ["oedema", "edema", "oedeme", "oedemes"],
  childId: [
    "id",
    "child",
    "child id",
    "childid",
    "patient",
    "patient id",
    "record id",
    "subject",
    "seqn",
    "study id",
  ],
  site: ["site", "hospital", "ward", "clinic", "centre", "center", "country", "dataset", "survey"],
  measurer: ["measurer", "observer", "reader", "enumerator", "team", "staff", "measured by"],
  cluster: ["cluster", "psu", "village", "household"],
  visit: ["visit", "visit date", "date", "round"],
};

/** Words of a name that say its unit; "m" is metres of length and months of age. */
const UNIT_WORDS: Readonly<Record<string, UnitSymbol>> = {
  mm: "mm",
  cm: "cm",
  m: "m",
  in: "in",
  inch: "in",
  inches: "in",
  ft: "ft",
  kg: "kg",
  kgs: "kg",
  g: "g",
  grams: "g",
  lb: "lb",
  lbs: "lb",
  pounds: "lb",
  mo: "mo",
  month: "mo",
  months: "mo",
  mois: "mo",
  mths: "mo",
  y: "y",
  yr: "y",
  yrs: "y",
  year: "y",
  years: "y",
  ans: "y",
  d: "d",
  day: "d",
  days: "d",
  jours: "d",
  wk: "w",
  weeks: "w",
};

/** CDC variables whose unit is not in their name. @source nhanes */
const UNIT_OF_NAME: Readonly<Record<string, UnitSymbol>> = {
  ridageyr: "y",
  ridexagm: "mo",
  ridageex: "mo",
  ridagemn: "mo",
  bmxwt: "kg",
  bmxrecum: "cm",
  bmxht: "cm",
  bmxarmc: "cm",
  bmxwaist: "cm",
  bmxthicr: "cm",
  bmxcalf: "cm",
  bmxhead: "cm",
};

const fieldOfName: ReadonlyMap<string, StudyField> = new Map(
  (Object.entries(NAMES) as [StudyField, readonly string[]][]).flatMap(([field, names]) =>
    names.map((name) => [name, field] as const),
  ),
);

/** What a column name says: its words, the unit among them and the field it is known for. */
export interface NameRead {
  readonly words: readonly string[];
  readonly field?: StudyField;
  readonly unit?: UnitSymbol;
}

/** Reads "Arm (cm)", "arm_mm", "MUAC", "BMXARMC" or "Poids kg"; accents and case do not matter. */
export function readColumnName(name: string): NameRead {
  const plain = name
    .normalize("NFD")
    .replaceAll(/\p{M}/gu, "")
    .replace(/([a-z])([A-Z])/g, "$1 $2");
  const words = plain.toLowerCase().match(/[a-z]+|\d+/g) ?? [];
  const unitWord = words.findLast((word, i) => i > 0 && Object.hasOwn(UNIT_WORDS, word));
  const stem = words.filter((word, i) => i === 0 || word !== unitWord).join(" ");
  const field = fieldOfName.get(stem);
  const unit = unitWord === undefined ? UNIT_OF_NAME[stem] : unitOf(unitWord, field);
  return { words, ...(field === undefined ? {} : { field }), ...(unit === undefined ? {} : { unit }) };
}

function unitOf(word: string, field: StudyField | undefined): UnitSymbol | undefined {
  return word === "m" && field === "ageMonths" ? "mo" : UNIT_WORDS[word];
}
