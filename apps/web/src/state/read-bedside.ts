import {
  type BodyIssue,
  type EstimatedChild,
  type Measurements,
  type StoredSiteProfile,
  weighChild,
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
import { language } from "../messages/language.ts";
import type { BedsideField, BedsideState } from "./bedside-state.ts";
import type { FieldMessage } from "./field-message.ts";
import { type EntryTextsRead, readTexts } from "./read-texts.ts";
import { siteInUse } from "./site-in-use.ts";

/** What the screen shows for a state before any dose is computed. */
export interface BedsideView {
  readonly child: EstimatedChild | undefined;
  /** What could be read, whether a weight can be had of it or not. */
  readonly measurements: Measurements;
  readonly messages: readonly FieldMessage[];
  /** Why there is no weight although the fields can be read, where no field is to blame. */
  readonly refusal: string | undefined;
}

const nothing: BedsideView = { child: undefined, measurements: {}, messages: [], refusal: undefined };

/** What is said of the measuring or the child, and measures nothing. */
const circumstances: ReadonlySet<string> = new Set([
  "posture",
  "people",
  "lengthReadings",
  "armReadings",
  "oedema",
  "missingLimb",
  "pregnant",
]);

/** Everything that a weight needs, computed anew from what was typed. */
export function readBedside({
  texts,
  typing,
  today,
  site,
}: Pick<BedsideState, "texts" | "typing"> & Partial<Pick<BedsideState, "today" | "site">>): BedsideView {
  const prepared = readTexts({ texts, typing, today });
  const read = readMeasurements(prepared.texts);
  // A doubtful age or waist is said, but does not take away a weight that stands without it.
  const rest = read.ok ? read : readMeasurements(without(prepared.texts, read.error));
  const doubts = (read.ok ? [] : read.error).filter(({ field }) => field !== typing).map(messageOfIssue);
  const issues = [...doubts, ...prepared.messages];
  if (!rest.ok) return { ...nothing, messages: issues };

  const { measurements, notices } = rest.value;
  const messages = [...issues, ...notices.map(messageOfNotice)];
  const isMeasured = Object.keys(measurements).some((name) => !circumstances.has(name));
  if (!isMeasured) return { ...nothing, messages };
  return {
    ...weigh({ measurements, messages, typing, site: siteInUse(site) }),
    measurements,
  };
}

function weigh({
  measurements,
  messages,
  typing,
  site,
}: {
  readonly measurements: Measurements;
  readonly messages: readonly FieldMessage[];
  readonly typing: BedsideField | undefined;
  readonly site: StoredSiteProfile | undefined;
}): BedsideView {
  const child = weighChild({ measurements, ...(site && { site }) });
  if (child.ok) return { ...nothing, child: child.value, messages };
  const { error } = child;
  if (error.type !== "measurement-out-of-range")
    return { ...nothing, messages, refusal: describeBodyIssue(error, language?.messages) };
  const { measurement } = error;
  const said = measurement === typing ? messages : [...messages, messageOfBodyIssue(error)];
  if (isNeeded(measurement)) return { ...nothing, messages: said };
  const { [measurement]: _, ...others } = measurements;
  return weigh({ measurements: others, messages: said, typing, site });
}

function isNeeded(field: string): boolean {
  return field === "lengthCm" || field === "armMm";
}

function without(texts: EntryTextsRead, issues: readonly EntryIssue[]): EntryTextsRead {
  const doubtful = new Set<string>(issues.map(({ field }) => field));
  const kept = Object.entries(texts).filter(([field]) => isNeeded(field) || !doubtful.has(field));
  return Object.fromEntries(kept);
}

function messageOfIssue(issue: EntryIssue): FieldMessage {
  const proposals = "proposals" in issue ? issue.proposals : [];
  // The proposals are buttons here, so the sentence need not ask about them.
  const sentence = describeEntryIssue(
    "proposals" in issue ? { ...issue, proposals: [] } : issue,
    language?.messages,
  );
  return { field: issue.field, kind: "issue", sentence, proposals };
}

function messageOfNotice(notice: EntryNotice): FieldMessage {
  const field = "field" in notice ? notice.field : "lengthCm";
  return { field, kind: "notice", sentence: describeEntryNotice(notice, language?.messages), proposals: [] };
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
  return { field, kind: "issue", sentence: describeBodyIssue(bare, language?.messages), proposals };
}
