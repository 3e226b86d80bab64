import type { MeasurementName } from "@steelyard/core/body";
import type { EntryField } from "@steelyard/core/entry";

interface ChildOption {
  readonly flag: string;
  /** Absent: the option is an answer in itself. */
  readonly argument?: string;
  readonly field: Exclude<EntryField, "standingHeightCm">;
  readonly help: string;
}

/** The measurements that `child` takes; names are a contract. */
export const CHILD_OPTIONS: readonly ChildOption[] = [
  { flag: "--length-cm", argument: "<number>", field: "lengthCm", help: "lying length, crown to heel" },
  {
    flag: "--arm-mm",
    argument: "<number>",
    field: "armMm",
    help: "mid-upper-arm circumference, arm relaxed",
  },
  { flag: "--sex", argument: "<f|m>", field: "sex", help: "sex" },
  {
    flag: "--age",
    argument: "<age>",
    field: "ageMonths",
    help: 'age with its unit: 9y, 18mo, "9y 3mo", 30d',
  },
  {
    flag: "--posture",
    argument: "<word>",
    field: "posture",
    help: "how the length was taken: lying, half-sitting, seated",
  },
  { flag: "--people", argument: "<1|2>", field: "people", help: "how many measured the length" },
  {
    flag: "--length-readings",
    argument: "<count>",
    field: "lengthReadings",
    help: "how many readings of the length were averaged",
  },
  {
    flag: "--arm-step-mm",
    argument: "<1|2|5|10>",
    field: "armStepMm",
    help: "the step that the arm was read to",
  },
  {
    flag: "--arm-readings",
    argument: "<count>",
    field: "armReadings",
    help: "how many readings of the arm were averaged",
  },
  { flag: "--waist-cm", argument: "<number>", field: "waistCm", help: "waist circumference" },
  { flag: "--thigh-cm", argument: "<number>", field: "thighCm", help: "mid-thigh circumference" },
  { flag: "--calf-cm", argument: "<number>", field: "calfCm", help: "calf circumference" },
  {
    flag: "--head-cm",
    argument: "<number>",
    field: "headCm",
    help: "head circumference, under 1 year",
  },
  {
    flag: "--knee-height-cm",
    argument: "<number>",
    field: "kneeHeightCm",
    help: "where the child cannot be stretched out: heel to top of the knee",
  },
  {
    flag: "--tibia-cm",
    argument: "<number>",
    field: "tibiaCm",
    help: "or the tibia, knee joint to inner ankle",
  },
  {
    flag: "--ulna-cm",
    argument: "<number>",
    field: "ulnaCm",
    help: "or the ulna, elbow to wrist, with --age",
  },
  {
    flag: "--build",
    argument: "<word>",
    field: "build",
    help: "by eye: very-thin, thin, average, heavy, very-heavy",
  },
  { flag: "--carer-kg", argument: "<number>", field: "carerKg", help: "weight stated by the carer" },
  {
    flag: "--earlier-kg",
    argument: "<number>",
    field: "earlierKg",
    help: "a scale weight of earlier, with --earlier-age and --age",
  },
  { flag: "--earlier-age", argument: "<age>", field: "earlierAgeMonths", help: "the age then" },
  {
    flag: "--missing-limb",
    argument: "<word>",
    field: "missingLimb",
    help: "hand, forearm, arm, foot, lower-leg, leg",
  },
  { flag: "--oedema", field: "oedema", help: "fluid under the skin" },
  { flag: "--pregnant", field: "pregnant", help: "pregnant" },
  {
    flag: "--weight-kg",
    argument: "<number>",
    field: "scaleKg",
    help: "weight from a scale; replaces the estimate",
  },
];

/** The option that gives a field: "--arm-mm". */
export function optionOf(field: EntryField | MeasurementName): string {
  if (field === "earlier") return "--earlier-kg";
  return CHILD_OPTIONS.find((option) => option.field === field)?.flag ?? field;
}
