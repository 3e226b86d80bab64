import { ageParts, type ChildSize, COMMON_PRACTICE, cite, type LookupStep } from "../lookup/index.ts";
import type { EquipmentChoice, EquipmentLine } from "./equipment-line.ts";
import { itemLine } from "./item-line.ts";

/** Child pads under either. @source common-practice */
const UNDER_MONTHS = 96;
const UNDER_KG = 25;

/** Child or adult pads: by age and weight where the age is known, else by weight alone. */
export function defibrillatorPads(child: ChildSize): EquipmentLine {
  const { age, totalKg } = child;
  const byWeight = padChoice("total-weight", totalKg, UNDER_KG);
  const byAge =
    age?.from === "age"
      ? { ...padChoice("age", age.ageMonths, UNDER_MONTHS), rests: ageParts(age).rests }
      : undefined;
  const [first, second] = byAge === undefined ? [byWeight] : [byAge, byWeight];
  const agree = second === undefined || second.value === first.value;
  const choices: [EquipmentChoice, ...EquipmentChoice[]] = agree
    ? [merged(first, second)]
    : first.value === "child-pads"
      ? [first, second]
      : [second, first];
  return itemLine({ item: "defibrillator-pads" }, child, choices, { notes: ["pads-apart"] });
}

function padChoice(by: "age" | "total-weight", value: number, edge: number): EquipmentChoice {
  const isUnder = value < edge;
  const step: LookupStep = { step: "band", by, value, ...(isUnder ? { high: edge } : { low: edge }) };
  return {
    value: isUnder ? "child-pads" : "adult-pads",
    rests: [by],
    working: [step],
    sources: cite([{ ...COMMON_PRACTICE, locator: "under 8 years or under 25 kg" }]),
  };
}

function merged(first: EquipmentChoice, second: EquipmentChoice | undefined): EquipmentChoice {
  if (second === undefined) return first;
  return {
    ...first,
    rests: [...first.rests, ...second.rests],
    working: [...first.working, ...second.working],
  };
}
