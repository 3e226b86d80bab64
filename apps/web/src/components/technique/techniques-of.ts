import type { Technique } from "@steelyard/paper/drawings";
import type { TypedField } from "../../state/bedside-state.ts";

const ofField: Readonly<Partial<Record<TypedField, Technique>>> = {
  armMm: "arm",
  armMm2: "arm",
  armMm3: "arm",
  waistCm: "waist",
  thighCm: "thigh",
  calfCm: "calf",
  headCm: "head",
  kneeHeightCm: "knee-height",
  tibiaCm: "calf",
  ulnaCm: "forearm-bone",
};

/** Whether there is something to show about a field. */
export function hasTechnique(field: TypedField): boolean {
  return field.startsWith("lengthCm") || field in ofField;
}

/** What to show about a field, for a child in this posture and as many people as were said to measure. */
export function techniquesOf({
  field,
  posture,
  people,
}: {
  readonly field: TypedField;
  readonly posture: string;
  readonly people: string;
}): readonly Technique[] {
  if (!field.startsWith("lengthCm")) return [ofField[field] ?? "arm"];
  if (posture === "half-sitting" || posture === "seated") return [posture];
  return [people === "1" ? "lying-one" : "lying-two", "longer-than-tape"];
}
