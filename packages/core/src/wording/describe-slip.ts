import type { Slip } from "../body/index.ts";
import { proposalOfSlip } from "../entry/index.ts";
import { describeProposals } from "./describe-proposals.ts";
import { ENGLISH } from "./english.ts";
import type { MessageCatalogue } from "./message-catalogue.ts";
import { say } from "./say.ts";

/**
 * What does not fit, how it may have come about and, unless the proposal is shown apart (as a button), what was perhaps meant.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { recogniseSlips } from "@steelyard/core/body";
 * import { centimetres, millimetres } from "@steelyard/core/units";
 * import { describeSlip } from "@steelyard/core/wording";
 *
 * const [slip] = recogniseSlips({ lengthCm: centimetres(136), armMm: millimetres(19) });
 * assert.match(slip ? describeSlip(slip) : "", /^Arm circumference 19\smm is unlikely: it may have been read in centimetres\. Did you mean 19\scm/);
 * ```
 */
export function describeSlip(
  slip: Slip,
  {
    catalogue = ENGLISH,
    proposalApart = false,
  }: { readonly catalogue?: MessageCatalogue | undefined; readonly proposalApart?: boolean } = {},
): string {
  const sentence = say(catalogue, "slip", slip);
  const proposal = proposalApart ? undefined : proposalOfSlip(slip);
  return proposal === undefined ? sentence : `${sentence} ${describeProposals([proposal], catalogue)}`;
}
