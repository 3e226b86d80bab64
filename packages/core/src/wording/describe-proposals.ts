import type { Proposal } from "../entry/index.ts";
import { ENGLISH } from "./english.ts";
import type { MessageCatalogue } from "./message-catalogue.ts";
import { say } from "./say.ts";

/**
 * One proposal in short, for a button: "1.36 m (136 cm)".
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { describeProposal } from "@steelyard/core/wording";
 * const proposal = { type: "unit", field: "lengthCm", typed: 1.36, from: "m", value: 136 } as const;
 * assert.match(describeProposal(proposal), /^1\.36\sm \(136\scm\)$/);
 * ```
 */
export function describeProposal(proposal: Proposal, catalogue: MessageCatalogue = ENGLISH): string {
  return say(catalogue, "proposal", proposal);
}

/**
 * All proposals as one question; empty where there is none.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { describeProposals } from "@steelyard/core/wording";
 * const proposal = { type: "swap", lengthCm: 136, armMm: 190 } as const;
 * assert.match(describeProposals([proposal]), /^Did you mean length 136\scm and arm/);
 * assert.equal(describeProposals([]), "");
 * ```
 */
export function describeProposals(
  proposals: readonly Proposal[],
  catalogue: MessageCatalogue = ENGLISH,
): string {
  if (proposals.length === 0) return "";
  const texts = proposals.map((proposal) => describeProposal(proposal, catalogue));
  return catalogue["did-you-mean"]({ proposals: texts });
}
