import type { Dose } from "@steelyard/core/dosing";
import { formatNumber, formatQuantity } from "@steelyard/core/units";

/** A value as a reader compares it: amounts joined with their unit, edges with theirs, fields under plain names. */
export type Readable = string | Dose | readonly Readable[] | ReadableObject;

export interface ReadableObject {
  readonly [field: string]: Readable;
}

type Loose = Readonly<Record<string, unknown>>;

/** What a bare number counts, by its field. */
const UNIT_OF_FIELD: Readonly<Record<string, readonly [field: string, unit: string]>> = {
  lowKg: ["from", "kg"],
  highKg: ["to under", "kg"],
  upToKg: ["up to", "kg"],
  passedAtKg: ["age no longer matters from", "kg"],
  lowMonths: ["from", "months"],
  highMonths: ["to under", "months"],
  totalMl: ["volume", "mL"],
  containerMl: ["container volume", "mL"],
  containerPuffs: ["container", "puffs"],
  belowMl: ["dilute below", "mL"],
  toMl: ["rounded to", "mL"],
  fromKg: ["rounded from", "kg"],
  withinH: ["counted over", "h"],
};

/** The amount of a dose, strength or preparation with the name that it goes by and what it counts per. */
const AMOUNTS: Readonly<Record<string, readonly [field: string, per?: Dose["per"]]>> = {
  amountPerKg: ["dose", "kg"],
  amountPerM2: ["dose", "m2"],
  amountPerMl: ["strength", "mL"],
  amountPerPuff: ["strength", "puff"],
  amount: ["dose"],
};

/** Ends and steps of an infusion, per kg and time. */
const INFUSION: Readonly<Record<string, string>> = {
  startPerKg: "start",
  lowPerKg: "lowest",
  highPerKg: "highest",
  stepPerKg: "step",
};

const NAMES: Readonly<Record<string, string>> = {
  expressedAs: "amount of",
  perBurnPercent: "for each percent of body surface burnt",
  fromPercent: "from percent",
  overH: "over hours",
  defaultOption: "default option",
  defaultReason: "reason for the default",
  signOff: "sign-off",
  deviceEnergiesJ: "device energies in J",
};

/** The fields of a formulary object, readable. */
export function readableFields(value: object): ReadableObject {
  const source = value as Loose;
  const unit = source.unit as Dose["unit"] | undefined;
  const fields: Record<string, Readable> = {};
  for (const [key, member] of Object.entries(source)) {
    if (member === undefined || key === "id" || (key === "unit" && unit !== undefined)) continue;
    const [name, readable] = readableField(key, member, source);
    fields[name] = readable;
  }
  return fields;
}

function readableField(key: string, member: unknown, source: Loose): [string, Readable] {
  const unit = source.unit as Dose["unit"] | undefined;
  if (typeof member === "number") {
    const amount = AMOUNTS[key];
    const edge = UNIT_OF_FIELD[key];
    const infusion = INFUSION[key];
    if (amount !== undefined && unit !== undefined) {
      const [name, per] = amount;
      return [name, { amount: member, unit, ...(per && { per }) }];
    }
    if (infusion !== undefined && unit !== undefined && source.kind === "infusion") {
      return [infusion, { amount: member, unit, per: `kg/${source.per as "min" | "h"}` }];
    }
    if (edge !== undefined) return [edge[0], `${formatNumber(member)} ${edge[1]}`];
    return [words(key), formatNumber(member)];
  }
  if (key === "accepted" && unit !== undefined) {
    const { lowPerKg, highPerKg, citations } = member as {
      lowPerKg: number;
      highPerKg: number;
      citations: unknown;
    };
    const low: Dose = { amount: lowPerKg, unit, per: "kg" };
    const high: Dose = { amount: highPerKg, unit, per: "kg" };
    return ["accepted", { from: low, to: high, citations: readable(citations) }];
  }
  if (key === "intervalMin" || key === "overMin") {
    const { low, high } = member as { low: number; high: number };
    const range = low === high ? formatNumber(low) : `${formatNumber(low)} to ${formatNumber(high)}`;
    return [key === "overMin" ? "given over" : "interval", `${range} min`];
  }
  return [words(key), readable(member)];
}

function readable(value: unknown): Readable {
  if (isDose(value)) return value;
  if (Array.isArray(value)) {
    return value.every((item) => typeof item !== "object") ? value.join(", ") : value.map(readable);
  }
  if (typeof value === "object" && value !== null) return readableFields(value);
  return typeof value === "number" ? formatNumber(value) : String(value);
}

export function isDose(value: unknown): value is Dose {
  if (typeof value !== "object" || value === null) return false;
  const keys = Object.keys(value);
  return "amount" in value && "unit" in value && keys.every((key) => ["amount", "unit", "per"].includes(key));
}

/** "maximumDoses" as "maximum doses". */
export function words(key: string): string {
  return NAMES[key] ?? key.replace(/([A-Z])/g, " $1").toLowerCase();
}

/** A dose as it reads in a sentence, with ordinary spaces. */
export function plainDose(dose: Dose): string {
  return formatQuantity(dose).replaceAll("\u00a0", " ");
}
