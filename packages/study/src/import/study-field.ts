import type { QuantityField, UnitSymbol } from "@steelyard/core/entry";

export type QuantityName =
  | "weightKg"
  | "lengthCm"
  | "standingHeightCm"
  | "statureCm"
  | "armMm"
  | "waistCm"
  | "thighCm"
  | "calfCm"
  | "headCm"
  | "ageMonths"
  | "carerKg";
type QuantityFields = Readonly<Record<QuantityName, QuantityField>>;

/** Fields that hold a number with a unit, and the field of core/entry whose limits and units they take. */
export const QUANTITY_FIELDS: QuantityFields = {
  weightKg: "scaleKg",
  lengthCm: "lengthCm",
  standingHeightCm: "standingHeightCm",
  statureCm: "lengthCm",
  armMm: "armMm",
  waistCm: "waistCm",
  thighCm: "thighCm",
  calfCm: "calfCm",
  headCm: "headCm",
  ageMonths: "ageMonths",
  carerKg: "carerKg",
};

/** Fields that are answered by one of a few words. */
export const WORD_FIELDS = {
  sex: {
    m: ["m", "male", "boy", "1", "garçon", "homme", "masculin"],
    f: ["f", "female", "girl", "2", "fille", "femme", "féminin"],
  },
  stance: {
    lying: ["lying", "l", "supine", "recumbent", "length", "couché"],
    standing: ["standing", "s", "h", "upright", "height", "debout"],
  },
  posture: { lying: ["lying", "supine"], "half-sitting": ["half-sitting"], seated: ["seated", "sitting"] },
  build: {
    "very-thin": ["very-thin"],
    thin: ["thin"],
    average: ["average"],
    heavy: ["heavy"],
    "very-heavy": ["very-heavy"],
  },
  oedema: { yes: ["yes", "y", "true", "1", "oui", "o"], no: ["no", "n", "false", "0", "2", "non"] },
} as const;

export type WordName = keyof typeof WORD_FIELDS;
/** Fields that name something: their words are kept as they are. */
type LabelName = "childId" | "site" | "measurer" | "cluster" | "visit";
/** What a column may be taken for; a stature is a length or a height, told apart by `stance` or by age (WHO rule). */
export type StudyField = QuantityName | WordName | LabelName;

/** The unit a field is kept in. */
export const STUDY_UNIT: Readonly<Record<QuantityName, UnitSymbol>> = {
  weightKg: "kg",
  lengthCm: "cm",
  standingHeightCm: "cm",
  statureCm: "cm",
  armMm: "mm",
  waistCm: "cm",
  thighCm: "cm",
  calfCm: "cm",
  headCm: "cm",
  ageMonths: "mo",
  carerKg: "kg",
};

export function isQuantity(field: string): field is QuantityName {
  return Object.hasOwn(QUANTITY_FIELDS, field);
}

export function isWord(field: string): field is WordName {
  return Object.hasOwn(WORD_FIELDS, field);
}

/** Every field a column may be taken for. */
export const STUDY_FIELDS: readonly StudyField[] = [
  ...(Object.keys(QUANTITY_FIELDS) as QuantityName[]),
  ...(Object.keys(WORD_FIELDS) as WordName[]),
  "childId",
  "site",
  "measurer",
  "cluster",
  "visit",
];
