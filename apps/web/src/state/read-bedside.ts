import { type BodyIssue, estimateWeight, type WeightComponent } from "@steelyard/core/body";
import { type ChildReport, computeChild } from "@steelyard/core/child";
import {
  type EntryIssue,
  type EntryNotice,
  type EntryTexts,
  type Proposal,
  readMeasurements,
} from "@steelyard/core/entry";
import { describeBodyIssue, describeEntryIssue, describeEntryNotice } from "@steelyard/core/wording";
import { draftFormulary } from "@steelyard/formulary";
import { type BedsideState, bedsideFields } from "./bedside-state.ts";
import { versions } from "./versions.ts";

/** A sentence about one field; an issue keeps the number out, a notice lets it in. */
export interface FieldMessage {
  readonly field: string;
  readonly kind: "issue" | "notice";
  readonly sentence: string;
  readonly proposals: readonly Proposal[];
}

/** What the screen shows for a state. */
export interface BedsideView {
  readonly child: ChildReport | undefined;
  /** The distribution of the weight, for the drawing; empty without a child and for a weight from a scale. */
  readonly components: readonly WeightComponent[];
  readonly messages: readonly FieldMessage[];
  /** Why there is no weight although the fields can be read, where no field is to blame. */
  readonly refusal: string | undefined;
}

const nothing: BedsideView = { child: undefined, components: [], messages: [], refusal: undefined };

/** Everything on the screen, computed anew from what was typed. */
export function readBedside({ texts, typing }: Pick<BedsideState, "texts" | "typing">): BedsideView {
  const read = readMeasurements(texts);
  // A doubtful age or sex is said, but does not take away a weight that stands without it.
  const rest = read.ok ? read : readMeasurements(withoutDoubtful(texts, read.error));
  const issues = (read.ok ? [] : read.error).filter(({ field }) => field !== typing).map(messageOfIssue);
  if (!rest.ok) return { ...nothing, messages: issues };

  const { measurements, notices } = rest.value;
  const messages = [...issues, ...notices.map(messageOfNotice)];
  if (Object.keys(measurements).length === 0) return { ...nothing, messages };

  const { software } = versions;
  const child = computeChild({ measurements, formulary: draftFormulary, versions: { software } });
  if (child.ok) {
    const estimate = estimateWeight(measurements);
    return {
      ...nothing,
      child: child.value,
      components: estimate.ok ? estimate.value.components : [],
      messages,
    };
  }
  const { error } = child;
  if (error.type !== "measurement-out-of-range")
    return { ...nothing, messages, refusal: describeBodyIssue(error) };
  if (error.measurement === typing) return { ...nothing, messages };
  return { ...nothing, messages: [...messages, messageOfBodyIssue(error)] };
}

function withoutDoubtful(texts: EntryTexts, issues: readonly EntryIssue[]): EntryTexts {
  const doubtful = issues.map(({ field }) => field);
  return Object.fromEntries(
    bedsideFields
      .filter((field) => field === "lengthCm" || field === "armMm" || !doubtful.includes(field))
      .map((field) => [field, texts[field]]),
  );
}

function messageOfIssue(issue: EntryIssue): FieldMessage {
  const proposals = "proposals" in issue ? issue.proposals : [];
  // The proposals are buttons here, so the sentence need not ask about them.
  const sentence = describeEntryIssue("proposals" in issue ? { ...issue, proposals: [] } : issue);
  return { field: issue.field, kind: "issue", sentence, proposals };
}

function messageOfNotice(notice: EntryNotice): FieldMessage {
  const field = "field" in notice ? notice.field : "lengthCm";
  return { field, kind: "notice", sentence: describeEntryNotice(notice), proposals: [] };
}

function messageOfBodyIssue(issue: Extract<BodyIssue, { type: "measurement-out-of-range" }>): FieldMessage {
  const { proposal, ...bare } = issue;
  const { measurement: field, value } = issue;
  const proposals: readonly Proposal[] =
    proposal !== undefined && (field === "lengthCm" || field === "armMm" || field === "ageMonths")
      ? [{ type: "unit", field, typed: value, from: proposal.from, value: proposal.value }]
      : [];
  return { field, kind: "issue", sentence: describeBodyIssue(bare), proposals };
}
