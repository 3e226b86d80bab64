import {
  type BodyIssue,
  estimateWeight,
  idealWeight,
  type Measurements,
  type WeightEstimate,
} from "@steelyard/core/body";
import {
  type EntryIssue,
  type EntryNotice,
  FIELD_UNIT,
  type Proposal,
  type QuantityField,
  readMeasurements,
} from "@steelyard/core/entry";
import { describeBodyIssue, describeEntryIssue, describeEntryNotice } from "@steelyard/core/wording";
import { type BedsideField, type BedsideState, bedsideFields } from "./bedside-state.ts";
import type { FieldMessage } from "./field-message.ts";
import { slipMessages } from "./slip-messages.ts";

/** A child that has a weight. */
export interface WeighedChild {
  /** What the weight rests on, and every dose after it. */
  readonly measurements: Measurements;
  readonly estimate: WeightEstimate;
  readonly idealKg: number | undefined;
}

/** What the screen shows for a state before any dose is computed. */
export interface BedsideView {
  readonly child: WeighedChild | undefined;
  readonly messages: readonly FieldMessage[];
  /** Why there is no weight although the fields can be read, where no field is to blame. */
  readonly refusal: string | undefined;
}

const nothing: BedsideView = { child: undefined, messages: [], refusal: undefined };

/** What is said of the measuring or the child, and measures nothing. */
const circumstances: ReadonlySet<string> = new Set([
  "posture",
  "people",
  "oedema",
  "missingLimb",
  "pregnant",
]);

/** Everything that a weight needs, computed anew from what was typed. */
export function readBedside({ texts, typing }: Pick<BedsideState, "texts" | "typing">): BedsideView {
  const read = readMeasurements(texts);
  // A doubtful age or waist is said, but does not take away a weight that stands without it.
  const rest = read.ok ? read : readMeasurements(without(texts, read.error));
  const issues = (read.ok ? [] : read.error).filter(({ field }) => field !== typing).map(messageOfIssue);
  if (!rest.ok) return { ...nothing, messages: issues };

  const { measurements, notices } = rest.value;
  const messages = [...issues, ...notices.map(messageOfNotice)];
  const isMeasured = Object.keys(measurements).some((name) => !circumstances.has(name));
  if (!isMeasured) return { ...nothing, messages };
  const view = weigh({ measurements, messages, typing });
  const slips = slipMessages({ measurements, messages: view.messages, typing });
  return { ...view, messages: [...view.messages, ...slips] };
}

function weigh({
  measurements,
  messages,
  typing,
}: {
  readonly measurements: Measurements;
  readonly messages: readonly FieldMessage[];
  readonly typing: BedsideField | undefined;
}): BedsideView {
  const estimate = estimateWeight(measurements);
  if (estimate.ok) {
    const { lengthCm } = estimate.value;
    const ideal = lengthCm === undefined ? undefined : idealWeight({ ...measurements, lengthCm });
    const idealKg = ideal?.ok ? ideal.value : undefined;
    return { ...nothing, child: { measurements, estimate: estimate.value, idealKg }, messages };
  }
  const { error } = estimate;
  if (error.type !== "measurement-out-of-range")
    return { ...nothing, messages, refusal: describeBodyIssue(error) };
  const { measurement } = error;
  const said = measurement === typing ? messages : [...messages, messageOfBodyIssue(error)];
  if (isNeeded(measurement)) return { ...nothing, messages: said };
  const { [measurement]: _, ...others } = measurements;
  return weigh({ measurements: others, messages: said, typing });
}

function isNeeded(field: string): boolean {
  return field === "lengthCm" || field === "armMm";
}

function without(
  texts: BedsideState["texts"],
  issues: readonly EntryIssue[],
): Partial<BedsideState["texts"]> {
  const doubtful = new Set<string>(issues.map(({ field }) => field));
  return Object.fromEntries(
    bedsideFields
      .filter((field) => isNeeded(field) || !doubtful.has(field))
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
    proposal !== undefined && field in FIELD_UNIT
      ? [
          {
            type: "unit",
            field: field as QuantityField,
            typed: value,
            from: proposal.from,
            value: proposal.value,
          },
        ]
      : [];
  return { field, kind: "issue", sentence: describeBodyIssue(bare), proposals };
}
