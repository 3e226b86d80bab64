import type { Formulary } from "@steelyard/core/dosing";
import { draftFormulary, type FormularyFault, validateFormulary } from "@steelyard/formulary";
import { describe, expect, it } from "vitest";

// biome-ignore lint/suspicious/noExplicitAny: faults are planted in places that the types would not let one reach
type Loose = any;

function faultsAfter(plant: (formulary: Loose) => void): readonly FormularyFault[] {
  const formulary = structuredClone(draftFormulary) as Loose;
  plant(formulary);
  const result = validateFormulary(formulary);
  return result.ok ? [] : result.error;
}

const medicine = (formulary: Loose, id: string): Loose =>
  formulary.medicines.find((candidate: { id: string }) => candidate.id === id);
const use = (formulary: Loose, id: string, useId: string): Loose =>
  medicine(formulary, id).uses.find((candidate: { id: string }) => candidate.id === useId);
const rule = (formulary: Loose, id: string, useId: string, option = 0): Loose =>
  use(formulary, id, useId).options[option].rule;

/** Held apart, so that the register of sources does not take it for a citation. */
const UNKNOWN_SOURCE = "nowhere";

interface Planted {
  readonly name: string;
  readonly plant: (formulary: Loose) => void;
  readonly place: string;
  readonly message: string;
}

const planted: readonly Planted[] = [
  {
    name: "a maximum a thousand times too small",
    plant: (f) => Object.assign(rule(f, "adrenaline", "arrest").maximum, { unit: "microgram" }),
    place: "adrenaline, use arrest",
    message: "maximum 1 microgram is below the dose for a child of 15 kg, 150 micrograms",
  },
  {
    name: "a maximum ten times too small",
    plant: (f) => Object.assign(rule(f, "adrenaline", "arrest").maximum, { amount: 0.1 }),
    place: "adrenaline, use arrest",
    message: "maximum 100 micrograms is below the dose for a child of 15 kg, 150 micrograms",
  },
  {
    name: "a maximum that nobody reaches",
    plant: (f) => Object.assign(rule(f, "tranexamic-acid", "trauma").maximum, { amount: 10 }),
    place: "tranexamic-acid, use trauma",
    message: "maximum 10 g would be reached by nobody: it is more than the dose for 300 kg, 4,500 mg",
  },
  {
    name: "a minimum above the maximum",
    plant: (f) => Object.assign(rule(f, "atropine", "bradycardia", 1).minimum, { amount: 600 }),
    place: "atropine, use bradycardia, option minimum-100",
    message: "minimum 600 micrograms is above the maximum 500 micrograms",
  },
  {
    name: "a dose outside its accepted range (mg for micrograms)",
    plant: (f) => Object.assign(rule(f, "lorazepam", "seizure"), { amountPerKg: 1 }),
    place: "lorazepam, use seizure",
    message: "dose 1 mg/kg is outside its accepted range, 0.08 to 0.12 mg/kg",
  },
  {
    name: "an accepted range the wrong way round",
    plant: (f) => Object.assign(rule(f, "lorazepam", "seizure").accepted, { lowPerKg: 0.2 }),
    place: "lorazepam, use seizure",
    message: "accepted range runs from 0.2 down to 0.12 mg/kg",
  },
  {
    name: "a limit in a unit of another kind",
    plant: (f) => Object.assign(rule(f, "amiodarone", "arrest").maximum, { unit: "mL" }),
    place: "amiodarone, use arrest, option by-weight",
    message: "maximum is in mL, but the dose is in mg",
  },
  {
    name: "a strength in a unit of another kind",
    plant: (f) => Object.assign(medicine(f, "ceftriaxone").strengths[0], { unit: "mmol" }),
    place: "ceftriaxone, use sepsis, option 80-mg-per-kg",
    message: "strength vial-1-g-in-10-ml is in mmol per mL, but the dose is in mg",
  },
  {
    name: "a strength a thousand times too strong",
    plant: (f) => Object.assign(medicine(f, "adenosine").strengths[0], { unit: "g" }),
    place: "adenosine, use tachycardia, option from-100",
    message: "a child of 10 kg would get 0.0003333 mL of strength vial-3-mg-per-ml: check dose and strength",
  },
  {
    name: "a strength that does not exist",
    plant: (f) => use(f, "rocuronium", "intubation").strengths.push("vial-20-mg-per-ml"),
    place: "rocuronium, use intubation",
    message: "strength vial-20-mg-per-ml is not a strength of rocuronium",
  },
  {
    name: "no strength at all",
    plant: (f) => Object.assign(use(f, "lorazepam", "seizure"), { strengths: [] }),
    place: "lorazepam, use seizure",
    message: "has no strength, so no volume can be given",
  },
  {
    name: "a gap between bands of age",
    plant: (f) => Object.assign(rule(f, "midazolam", "seizure-buccal", 1).bands[1], { lowMonths: 13 }),
    place: "midazolam, use seizure-buccal, option by-age, bands of age",
    message: "nothing covers 12 to 13 months",
  },
  {
    name: "bands of age that overlap",
    plant: (f) => Object.assign(rule(f, "suxamethonium", "intubation").bands[0], { highMonths: 13 }),
    place: "suxamethonium, use intubation, bands of age",
    message: "two bands cover 12 to 13 months",
  },
  {
    name: "an open band before the last",
    plant: (f) => {
      rule(f, "suxamethonium", "intubation").bands[0].highMonths = undefined;
      delete rule(f, "suxamethonium", "intubation").bands[0].highMonths;
    },
    place: "suxamethonium, use intubation, bands of age",
    message: "the band from 0 months is open, but is not the last",
  },
  {
    name: "a gap between bands of weight of a dilution",
    plant: (f) =>
      Object.assign(use(f, "ceftriaxone", "sepsis").administration.dilution.volume.bands[0], { highKg: 19 }),
    place: "ceftriaxone, use sepsis, bands of weight",
    message: "nothing covers 19 to 20 kg",
  },
  {
    name: "puffs of two inhalers",
    plant: (f) => {
      medicine(f, "salbutamol").strengths.push({
        ...medicine(f, "salbutamol").strengths.find(({ id }: { id: string }) => id.startsWith("inhaler")),
        id: "inhaler-200",
        amountPerPuff: 200,
      });
      use(f, "salbutamol", "asthma-inhaler").strengths.push("inhaler-200");
    },
    place: "salbutamol, use asthma-inhaler, option ten-puffs",
    message: "is in puffs of more than one inhaler: which one?",
  },
  {
    name: "puffs that nothing gives",
    plant: (f) =>
      Object.assign(use(f, "ipratropium", "asthma-inhaler"), { strengths: ["nebule-250-micrograms-per-ml"] }),
    place: "ipratropium, use asthma-inhaler",
    message: "is in puffs, but no strength says what a puff holds",
  },
  {
    name: "half a puff",
    plant: (f) => Object.assign(rule(f, "salbutamol", "asthma-inhaler"), { amount: 2.5 }),
    place: "salbutamol, use asthma-inhaler, option ten-puffs",
    message: "asks for part of a puff",
  },
  {
    name: "more puffs than an inhaler holds",
    plant: (f) => Object.assign(rule(f, "salbutamol", "asthma-inhaler"), { amount: 300 }),
    place: "salbutamol, use asthma-inhaler, option ten-puffs",
    message: "asks for more puffs than the 200 of strength inhaler-100-micrograms-per-puff",
  },
  {
    name: "an inhaler dosed in mmol",
    plant: (f) => Object.assign(rule(f, "salbutamol", "asthma-inhaler"), { amount: 2, unit: "mmol" }),
    place: "salbutamol, use asthma-inhaler, option ten-puffs",
    message: "strength inhaler-100-micrograms-per-puff is in microgram per puff, but the dose is in mmol",
  },
  {
    name: "a limit of age without edges",
    plant: (f) => {
      delete use(f, "ceftriaxone", "sepsis").limits[0].lowMonths;
    },
    place: "ceftriaxone, use sepsis, limit of age",
    message: "has neither a lower nor an upper edge",
  },
  {
    name: "a preparation with its weights the wrong way round",
    plant: (f) => Object.assign(use(f, "adrenaline", "infusion").preparations[1], { lowKg: 50 }),
    place: "adrenaline, use infusion, preparation 3-mg-in-50-ml",
    message: "the lower edge 50 kg is not below the upper edge 40 kg",
  },
  {
    name: "a start outside the range of an infusion",
    plant: (f) => Object.assign(rule(f, "adrenaline", "infusion"), { startPerKg: 10 }),
    place: "adrenaline, use infusion",
    message: "the start 10 micrograms/kg/min is not between 0.05 and 1",
  },
  {
    name: "parts of a fluid that do not make the whole",
    plant: (f) =>
      Object.assign(use(f, "balanced-crystalloid", "burns").administration.portions[1], { share: 0.6 }),
    place: "balanced-crystalloid, use burns, option 3-ml",
    message: "its parts make 1.1, not 1",
  },
  {
    name: "a dose that cannot run in parts",
    plant: (f) =>
      Object.assign(use(f, "adrenaline", "arrest").administration, { portions: [{ share: 1, overH: 8 }] }),
    place: "adrenaline, use arrest",
    message: "runs in parts, but is not a dose in mL",
  },
  {
    name: "a start outside the range of one age",
    plant: (f) => Object.assign(rule(f, "aminophylline", "asthma-infusion").bands[1].rule, { startPerKg: 7 }),
    place: "aminophylline, use asthma-infusion",
    message: "the start 7 mg/kg/h is not between 0.5 and 0.7",
  },
  {
    name: "an age that no infusion is for",
    plant: (f) => Object.assign(rule(f, "aminophylline", "asthma-infusion").bands[1], { lowMonths: 120 }),
    place: "aminophylline, use asthma-infusion, bands of age",
    message: "nothing covers 108 to 120 months",
  },
  {
    name: "an infusion that counts in minutes at one age alone",
    plant: (f) => Object.assign(rule(f, "aminophylline", "asthma-infusion").bands[1].rule, { per: "min" }),
    place: "aminophylline, use asthma-infusion",
    message: "counts in mg/kg/h and mg/kg/min: all bands must count in one",
  },
  {
    name: "an infusion that nobody can make up",
    plant: (f) => {
      delete use(f, "adrenaline", "infusion").preparations;
    },
    place: "adrenaline, use infusion",
    message: "is an infusion, but nothing says how the syringe is made up",
  },
  {
    name: "weights that no preparation is for",
    plant: (f) => {
      const infusion = use(f, "adrenaline", "infusion");
      infusion.preparations = infusion.preparations.map((each: object) => ({ ...each, highKg: 60 }));
    },
    place: "adrenaline, use infusion",
    message: "no preparation is for a child of 60 kg",
  },
  {
    name: "a preparation in a unit of another kind",
    plant: (f) => Object.assign(use(f, "adrenaline", "infusion").preparations[0], { unit: "unit" }),
    place: "adrenaline, use infusion",
    message: "preparation 1-mg-in-50-ml is in unit, but the dose is in microgram",
  },
  {
    name: "a cumulative maximum in a unit of another kind",
    plant: (f) =>
      Object.assign(use(f, "atropine", "bradycardia").repeat.cumulativeMaximum.total, { unit: "unit" }),
    place: "atropine, use bradycardia, option no-minimum",
    message: "cumulative maximum is in unit, but the dose is in microgram",
  },
  {
    name: "a medicine twice",
    plant: (f) => f.medicines.push(structuredClone(f.medicines[0])),
    place: "formulary",
    message: "medicine adrenaline occurs more than once",
  },
  {
    name: "a use twice",
    plant: (f) => medicine(f, "lorazepam").uses.push(structuredClone(use(f, "lorazepam", "seizure"))),
    place: "lorazepam",
    message: "use seizure occurs more than once",
  },
  {
    name: "an option twice",
    plant: (f) => Object.assign(use(f, "defibrillation", "arrest").options[1], { id: "4-j-per-kg" }),
    place: "defibrillation, use arrest",
    message: "option 4-j-per-kg occurs more than once",
  },
  {
    name: "a default that is not an option",
    plant: (f) => Object.assign(use(f, "glucose-10", "hypoglycaemia"), { defaultOption: "ten" }),
    place: "glucose-10, use hypoglycaemia",
    message: "default option ten is not one of its options",
  },
  {
    name: "a choice between options without a reason",
    plant: (f) => {
      delete use(f, "glucose-10", "hypoglycaemia").defaultReason;
    },
    place: "glucose-10, use hypoglycaemia",
    message: "has more than one option but no reason for the default",
  },
  {
    name: "a source that does not exist",
    plant: (f) =>
      Object.assign(use(f, "lorazepam", "seizure").options[0].citations[0], { sourceId: UNKNOWN_SOURCE }),
    place: "lorazepam, use seizure, option by-weight",
    message: "source nowhere is not in the list of sources",
  },
  {
    name: "a citation that claims more than its source",
    plant: (f) =>
      Object.assign(use(f, "lorazepam", "seizure").options[0].citations[0], { verification: "read" }),
    place: "lorazepam, use seizure, option by-weight",
    message: "is marked as read in aes-2016, which is itself known from memory only",
  },
  {
    name: "a source that nothing cites",
    plant: (f) => f.sources.push({ id: "idle", title: "Idle", verification: "memory" }),
    place: "source idle",
    message: "is cited by nothing",
  },
  {
    name: "an energy in mg",
    plant: (f) => {
      rule(f, "cardioversion", "tachycardia").unit = "mL";
      use(f, "cardioversion", "tachycardia").options[0].further = [];
    },
    place: "cardioversion, use tachycardia, option 1-j-per-kg",
    message: "is an energy, but not in J",
  },
  {
    name: "energies of the device out of order",
    plant: (f) => Object.assign(f, { deviceEnergiesJ: [10, 5] }),
    place: "device energies",
    message: "5 J stands after 10 J: they must rise",
  },
  {
    name: "no device energies",
    plant: (f) => Object.assign(f, { deviceEnergiesJ: [] }),
    place: "defibrillation, use arrest, option 4-j-per-kg",
    message: "is an energy, but the formulary lists no device energies",
  },
];

const misshapen: readonly Planted[] = [
  {
    name: "a word for a number",
    plant: (f) => Object.assign(rule(f, "adrenaline", "arrest"), { amountPerKg: "ten" }),
    place: "adrenaline, use arrest, option by-weight, rule, amount per kg",
    message: 'must be a number: it is "ten"',
  },
  {
    name: "a dose that is no number",
    plant: (f) => Object.assign(rule(f, "adrenaline", "arrest"), { amountPerKg: Number.NaN }),
    place: "adrenaline, use arrest, option by-weight, rule, amount per kg",
    message: "must be a number: it is NaN",
  },
  {
    name: "a negative dose",
    plant: (f) => Object.assign(rule(f, "adrenaline", "arrest"), { amountPerKg: -10 }),
    place: "adrenaline, use arrest, option by-weight, rule, amount per kg",
    message: "must be more than 0: it is -10",
  },
  {
    name: "more decimals than can be held exactly",
    plant: (f) => Object.assign(rule(f, "adrenaline", "arrest"), { amountPerKg: 0.123_456_78 }),
    place: "adrenaline, use arrest, option by-weight, rule, amount per kg",
    message: "must have at most 6 decimals: it is 0.12345678",
  },
  {
    name: "a field that is missing",
    plant: (f) => {
      delete medicine(f, "amiodarone").name;
    },
    place: "amiodarone, name",
    message: "is missing",
  },
  {
    name: "a field that does not exist",
    plant: (f) => Object.assign(use(f, "ketamine", "induction"), { maxDose: 5 }),
    place: "ketamine, use induction, max dose",
    message: "is not a field of the formulary",
  },
  {
    name: "a unit that is not written in full",
    plant: (f) => Object.assign(rule(f, "adrenaline", "arrest"), { unit: "mcg" }),
    place: "adrenaline, use arrest, option by-weight, rule, unit",
    message:
      'must be one of "g", "mg", "microgram", "nanogram", "mmol", "unit", "mL", "puff", "J": it is "mcg"',
  },
  {
    name: "a value without a source",
    plant: (f) => Object.assign(use(f, "adrenaline", "arrest").options[0], { citations: [] }),
    place: "adrenaline, use arrest, option by-weight, citations",
    message: "has no source: it is an empty list",
  },
  {
    name: "an id with a space",
    plant: (f) => Object.assign(medicine(f, "lorazepam"), { id: "Lora zepam" }),
    place: "Lora zepam, id",
    message: 'must be lower-case words joined by hyphens: it is "Lora zepam"',
  },
];

describe("validateFormulary()", () => {
  it.each([...planted, ...misshapen])("finds $name", ({ plant, place, message }) => {
    expect(faultsAfter(plant)).toContainEqual({ place, message });
  });

  it("lists every fault, not the first", () => {
    const faults = faultsAfter((formulary) => {
      for (const { plant } of [planted[0], planted[4], planted[11], planted[26], planted[30]] as Planted[]) {
        plant(formulary);
      }
    });
    const wanted = [planted[0], planted[4], planted[11], planted[26], planted[30]] as Planted[];
    for (const { place, message } of wanted) expect(faults).toContainEqual({ place, message });
  });

  it.each([null, undefined, 3, "text", [], {}])("refuses %o without throwing", (candidate) => {
    expect(validateFormulary(candidate).ok).toBe(false);
  });

  it("gives a formulary that computes", () => {
    const result = validateFormulary(JSON.parse(JSON.stringify(draftFormulary)));
    expect(result).toEqual({ ok: true, value: draftFormulary satisfies Formulary });
  });
});
