import { isAge, type Proposal, type ValuesProposal } from "@steelyard/core/entry";
import { type BedsideField, bedsideFields } from "./bedside-state.ts";

/** What the fields say once a proposal has been accepted; `place` is the field it was made for, be it a second reading. */
export function textsOfProposal(proposal: Proposal, place?: string): Partial<Record<BedsideField, string>> {
  if (proposal.type === "swap") {
    return { lengthCm: String(proposal.lengthCm), armMm: String(proposal.armMm) };
  }
  if (proposal.type === "values") return textsOfValues(proposal);
  const field =
    bedsideFields.find((name) => name === place) ?? bedsideFields.find((name) => name === proposal.field);
  if (field === undefined) return {};
  // An age keeps the unit it was meant in: "9 y" says more to the next reader than "108".
  return { [field]: isAge(proposal.field) ? `${proposal.typed} ${proposal.from}` : String(proposal.value) };
}

function textsOfValues({ values }: ValuesProposal): Partial<Record<BedsideField, string>> {
  const known = values.flatMap(({ field, value }) => {
    const own = bedsideFields.find((name) => name === field);
    return own === undefined ? [] : [[own, isAge(field) ? `${value} mo` : String(value)]];
  });
  return Object.fromEntries(known);
}
