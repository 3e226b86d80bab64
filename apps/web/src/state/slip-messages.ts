import { type Measurements, recogniseSlips, type StoredSiteProfile } from "@steelyard/core/body";
import { proposalOfSlip } from "@steelyard/core/entry";
import { describeSlip } from "@steelyard/core/wording";
import { language } from "../messages/language.ts";
import type { BedsideField } from "./bedside-state.ts";
import type { FieldMessage } from "./field-message.ts";

/** More ways out than this are no help in a hurry. */
const mostProposals = 2;

/**
 * What was perhaps meant, where the measurements do not belong together and a slip would explain it: a notice with its corrections to press.
 * Nothing about a field that is being typed in, or that has corrections to press already; a doubt without a correction is for the weight's
 * own warnings.
 */
export function slipMessages({
  measurements,
  messages,
  typing,
  site,
}: {
  readonly measurements: Measurements;
  readonly messages: readonly FieldMessage[];
  readonly typing: BedsideField | undefined;
  readonly site?: StoredSiteProfile | undefined;
}): readonly FieldMessage[] {
  const [first, ...others] = recogniseSlips(measurements, site && { site }).filter(
    ({ type }) => type !== "outlier",
  );
  const [change] = first?.changes ?? [];
  if (first === undefined || change === undefined) return [];
  const isSpokenFor = first.changes.some(
    ({ measurement }) =>
      measurement === typing ||
      messages.some(({ field, proposals }) => field === measurement && proposals.length > 0),
  );
  if (isSpokenFor) return [];
  const proposals = [first, ...others].slice(0, mostProposals).flatMap((slip) => proposalOfSlip(slip) ?? []);
  return [
    {
      field: change.measurement,
      kind: "notice",
      sentence: describeSlip(first, { catalogue: language?.messages, proposalApart: true }),
      proposals,
    },
  ];
}
