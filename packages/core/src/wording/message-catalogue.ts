import type { BodyIssue, BodyWarning, MeasurementName, Slip } from "../body/index.ts";
import type { ProblemId } from "../dosing/index.ts";
import type { EntryField, EntryIssue, EntryNotice, Proposal, UnitSymbol } from "../entry/index.ts";

type Keyed<Prefix extends string, T extends { readonly type: string }> = {
  [V in T as `${Prefix}.${V["type"]}`]: V;
};

/**
 * Every message key and the values its sentence is made from.
 *
 * The keys follow from the types of the issues and warnings themselves, so that a new one does not compile
 * before it has its sentence in every language.
 */
export type MessageValues = Keyed<"entry-issue", EntryIssue> &
  Keyed<"entry-notice", EntryNotice> &
  Keyed<"proposal", Proposal> &
  Keyed<"body-issue", BodyIssue> &
  Keyed<"body-warning", BodyWarning> &
  Keyed<"slip", Slip> & {
    readonly "rests.estimated": { readonly rests: readonly MeasurementName[] };
    readonly "rests.scale": Nothing;
    readonly "did-you-mean": { readonly proposals: readonly string[] };
    readonly "caution.title": Nothing;
    readonly "caution.decision-support": Nothing;
    readonly "caution.weigh": Nothing;
    readonly "caution.local-guidelines": Nothing;
    readonly "caution.check-doses": Nothing;
    readonly "caution.not-a-device": Nothing;
    readonly "draft.title": Nothing;
    readonly "draft.text": Nothing;
    readonly "problem.name": { readonly problem: ProblemId };
    readonly "field.name": { readonly field: FieldName };
    readonly "unit.name": { readonly unit: UnitSymbol };
  };

/** Whatever of a child has a name: a field to type into, or a measurement that came another way. */
export type FieldName = EntryField | MeasurementName;

type Nothing = Readonly<Record<never, never>>;

export type MessageKey = keyof MessageValues;

/** One language: a sentence for every key. */
export type MessageCatalogue = { readonly [K in MessageKey]: (values: MessageValues[K]) => string };
