/** A unit in words: one of it, and any other number of it. */
interface UnitForms {
  readonly one: string;
  readonly other: string;
}

/** How one language writes numbers, and the units that safe-medication rules want in full. */
export interface NumberStyle {
  readonly decimalMark: string;
  /** Between groups of three digits of the integer part. */
  readonly groupMark: string;
  /** Which form goes with a number. */
  readonly plural: (value: number) => "one" | "other";
  readonly microgram: UnitForms;
  readonly nanogram: UnitForms;
  readonly unit: UnitForms;
  /** One actuation of a metered-dose inhaler. */
  readonly puff: UnitForms;
}

/** 1,500.5; everything but 1 is plural. */
export const ENGLISH_NUMBERS: NumberStyle = {
  decimalMark: ".",
  groupMark: ",",
  plural: (value) => (value === 1 ? "one" : "other"),
  microgram: { one: "microgram", other: "micrograms" },
  nanogram: { one: "nanogram", other: "nanograms" },
  unit: { one: "unit", other: "units" },
  puff: { one: "puff", other: "puffs" },
};

/** 1 500,5 with a narrow no-break space; everything under 2 is singular, as `Intl.PluralRules` has it. */
export const FRENCH_NUMBERS: NumberStyle = {
  decimalMark: ",",
  groupMark: "\u202f",
  plural: (value) => (Math.abs(value) < 2 ? "one" : "other"),
  microgram: { one: "microgramme", other: "microgrammes" },
  nanogram: { one: "nanogramme", other: "nanogrammes" },
  unit: { one: "unité", other: "unités" },
  puff: { one: "bouffée", other: "bouffées" },
};
