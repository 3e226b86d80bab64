import type { MeasurementName } from "@steelyard/core/body";
import type { EntryField } from "@steelyard/core/entry";

interface ChildOption {
  readonly flag: string;
  readonly argument: string;
  readonly field: Exclude<EntryField, "standingHeightCm" | "headCm">;
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
  { flag: "--waist-cm", argument: "<number>", field: "waistCm", help: "waist circumference" },
  { flag: "--thigh-cm", argument: "<number>", field: "thighCm", help: "mid-thigh circumference" },
  { flag: "--calf-cm", argument: "<number>", field: "calfCm", help: "calf circumference" },
  {
    flag: "--build",
    argument: "<word>",
    field: "build",
    help: "by eye: very-thin, thin, average, heavy, very-heavy",
  },
  { flag: "--carer-kg", argument: "<number>", field: "carerKg", help: "weight stated by the carer" },
  {
    flag: "--weight-kg",
    argument: "<number>",
    field: "scaleKg",
    help: "weight from a scale; replaces the estimate",
  },
];

/** The option that gives a field: "--arm-mm". */
export function optionOf(field: EntryField | MeasurementName): string {
  return CHILD_OPTIONS.find((option) => option.field === field)?.flag ?? field;
}
