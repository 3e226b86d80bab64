import type { Proposal } from "../entry/index.ts";
import { ENGLISH } from "./english.ts";
import type { MessageCatalogue } from "./message-catalogue.ts";
import { say } from "./say.ts";

/** One proposal in short, for a button: "1.36 m (136 cm)". */
export function describeProposal(proposal: Proposal, catalogue: MessageCatalogue = ENGLISH): string {
  return say(catalogue, "proposal", proposal);
}

/** All proposals as one question; empty where there is none. */
export function describeProposals(
  proposals: readonly Proposal[],
  catalogue: MessageCatalogue = ENGLISH,
): string {
  if (proposals.length === 0) return "";
  const texts = proposals.map((proposal) => describeProposal(proposal, catalogue));
  return catalogue["did-you-mean"]({ proposals: texts });
}
