import type { StoredSiteProfile } from "@steelyard/core/body";
import type { ChoiceField, EntryField, RepeatedField } from "@steelyard/core/entry";
import type { FormularyInUse, SiteRules } from "./site-rules.ts";

/** The fields of this screen, in the order they are asked. */
export const bedsideFields = [
  "lengthCm",
  "armMm",
  "posture",
  "people",
  "sex",
  "ageMonths",
  "birthDate",
  "waistCm",
  "thighCm",
  "calfCm",
  "headCm",
  "build",
  "carerKg",
  "earlierKg",
  "earlierDate",
  "earlierAgeMonths",
  "scaleKg",
  "lengthCm2",
  "armMm2",
  "lengthCm3",
  "armMm3",
  "kneeHeightCm",
  "tibiaCm",
  "ulnaCm",
  "oedema",
  "missingLimb",
  "pregnant",
  "burnPercent",
] as const satisfies readonly (EntryField | RepeatField | DateField | "burnPercent")[];
export type BedsideField = (typeof bedsideFields)[number];

/** A second or third reading of a length or an arm. */
export type RepeatField = `${RepeatedField}${2 | 3}`;
/** A day in the calendar, in place of an age. */
export type DateField = "birthDate" | "earlierDate";

/** Fields that are answered by choosing; every other is typed. */
export type ChosenField = Extract<BedsideField, ChoiceField>;
export type TypedField = Exclude<BedsideField, ChosenField>;

export function isDateField(field: BedsideField): field is DateField {
  return field === "birthDate" || field === "earlierDate";
}

export function isAgeField(field: BedsideField): boolean {
  return field === "ageMonths" || field === "earlierAgeMonths";
}

/** Chosen in the line under the two measurements, where it is always in sight. */
export const alwaysChosen = ["posture", "people"] as const satisfies readonly ChosenField[];

/** Fields that stay folded away until asked for, and open together where one is asked with the other. */
export const optionalFields = [
  ["sex"],
  ["ageMonths", "birthDate"],
  ["waistCm"],
  ["thighCm"],
  ["calfCm"],
  ["headCm"],
  ["build"],
  ["carerKg"],
  ["earlierKg", "earlierDate", "earlierAgeMonths"],
  ["scaleKg"],
  ["lengthCm2", "armMm2"],
  ["lengthCm3", "armMm3"],
  ["kneeHeightCm", "tibiaCm", "ulnaCm"],
  ["oedema", "missingLimb", "pregnant"],
  ["burnPercent"],
] as const satisfies readonly (readonly BedsideField[])[];

/** The first field of each group names the group. */
export type OptionalField = (typeof optionalFields)[number][0];

/** Everything the screen knows. What it shows is computed from this by `readBedside`. */
export interface BedsideState {
  /** Exactly what was typed or chosen; nothing here is ever rewritten unless a person presses a button. */
  readonly texts: Readonly<Record<BedsideField, string>>;
  /** Optional fields that are open. */
  readonly open: readonly OptionalField[];
  /** The rarer optional fields are offered. */
  readonly offersAll: boolean;
  /** The field under the fingers just now: half a number is no reason to complain. */
  readonly typing: BedsideField | undefined;
  /** The texts come from before the page was reloaded, and nobody has touched them since. */
  readonly carriedOver: boolean;
  /** The texts of the child before, kept so that a slip of the thumb on “New child” costs nothing. */
  readonly setAside: BedsideState["texts"] | undefined;
  /** The day, as 2026-11-25; undefined until the page has looked. Only a date of birth asks for it. */
  readonly today: string | undefined;
  /** Lines of the sheet that somebody keeps at the top of it, by id, on this device. */
  readonly pinned: readonly string[];
  /** The calibration kept on this device; not used where it is of another body model (`siteInUse`). */
  readonly site: StoredSiteProfile | undefined;
  /** What doses are computed by; undefined until the device has been looked through. */
  readonly formulary: FormularyInUse | undefined;
  /** What the next child is computed by: it never changes in the middle of a case. */
  readonly next: SiteRules | undefined;
  /** What the child set aside was computed by. */
  readonly rulesAside: SiteRules | undefined;
  /** The child before has been brought back; another one with the same numbers is not it. */
  readonly broughtBack: boolean;
  /** Something was typed for this child, though it may have been taken out again. */
  readonly begun: boolean;
  /** The other published dose that somebody has chosen for this child, by id of the line. */
  readonly choices: Readonly<Record<string, string>>;
  /** What the sheet is searched for. */
  readonly search: string;
  /** The problems that are not as they start: the first starts open, the others folded. */
  readonly turned: readonly string[];
}

const noTexts = Object.fromEntries(bedsideFields.map((field) => [field, ""])) as BedsideState["texts"];

export const emptyBedside: BedsideState = {
  texts: noTexts,
  open: [],
  offersAll: false,
  typing: undefined,
  carriedOver: false,
  setAside: undefined,
  today: undefined,
  pinned: [],
  site: undefined,
  formulary: undefined,
  next: undefined,
  rulesAside: undefined,
  broughtBack: false,
  begun: false,
  choices: {},
  search: "",
  turned: [],
};

/** The state for texts found in the page or kept from before a reload. */
export function bedsideFrom({
  texts,
  carriedOver,
}: {
  readonly texts: Partial<Record<BedsideField, string>>;
  readonly carriedOver: boolean;
}): BedsideState {
  const all = { ...noTexts, ...texts };
  return {
    ...emptyBedside,
    texts: all,
    open: optionalFields.filter((group) => group.some((field) => all[field] !== "")).map(([first]) => first),
    carriedOver: carriedOver && isTouched(all),
    begun: isTouched(all),
  };
}

export function isTouched(texts: BedsideState["texts"]): boolean {
  return bedsideFields.some((field) => texts[field] !== "");
}
