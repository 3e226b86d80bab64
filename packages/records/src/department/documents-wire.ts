import * as v from "valibot";
import { count, dayRange, instant, number, passwordText, personName, sha256, shownName } from "./wire.ts";

/** What a site computes by and has to sign. */
export type DocumentKind = "formulary" | "calibration";
const kind = v.picklist(["formulary", "calibration"]);

interface Someone {
  readonly id: string;
  readonly name: string;
}
const someone: v.GenericSchema<Someone> = v.strictObject({ id: v.string(), name: personName });

export interface DocumentEntry {
  /** Of the content; the name of the document everywhere. */
  readonly sha256: string;
  readonly kind: DocumentKind;
  readonly label: string;
  readonly at: string;
  readonly by: Someone;
  readonly signatures: readonly {
    readonly person: Someone;
    readonly role: string;
    /** As the signer wrote it: licence, number, register. */
    readonly registration: string;
    readonly at: string;
    /** `false` where the signer is no reviewer any more, or wrote what needs the eyes of others. */
    readonly counts: boolean;
  }[];
  /** `because` names the high-alert medicines that need two. */
  readonly needs: {
    readonly signatures: number;
    readonly have: number;
    readonly because: readonly string[];
  };
  /** Was in force once, or is. */
  readonly published: boolean;
  readonly inForce: boolean;
}
const documentEntry: v.GenericSchema<DocumentEntry> = v.strictObject({
  sha256,
  kind,
  label: v.string(),
  at: instant,
  by: someone,
  signatures: v.array(
    v.strictObject({
      person: someone,
      role: v.string(),
      registration: v.string(),
      at: instant,
      counts: v.boolean(),
    }),
  ),
  needs: v.strictObject({ signatures: count, have: count, because: v.array(v.string()) }),
  published: v.boolean(),
  inForce: v.boolean(),
});

export const documentsQuerySchema: v.GenericSchema<{ readonly kind: DocumentKind }> = v.strictObject({
  kind,
});
export interface DocumentsAnswer {
  /** The latest first. */
  readonly documents: readonly DocumentEntry[];
  /** The latest first; the first of them is in force. */
  readonly publications: readonly {
    readonly position: number;
    readonly sha256: string;
    readonly at: string;
    readonly by: Someone;
  }[];
}
export const documentsAnswerSchema: v.GenericSchema<DocumentsAnswer> = v.strictObject({
  documents: v.array(documentEntry),
  publications: v.array(v.strictObject({ position: count, sha256, at: instant, by: someone })),
});

export const documentQuerySchema: v.GenericSchema<{ readonly sha256: string }> = v.strictObject({ sha256 });
export interface WholeDocument {
  readonly document: DocumentEntry;
  readonly content: string;
}
export const wholeDocumentSchema: v.GenericSchema<WholeDocument> = v.strictObject({
  document: documentEntry,
  content: v.string(),
});

export interface AddDocumentRequest {
  readonly kind: DocumentKind;
  readonly label: string;
  readonly content: string;
}
export const addDocumentRequestSchema: v.GenericSchema<AddDocumentRequest> = v.strictObject({
  kind,
  label: shownName,
  content: v.pipe(v.string(), v.minLength(1, "must not be empty")),
});
/** A place in the document and what is wrong there. */
export interface DocumentFault {
  readonly place: string;
  readonly message: string;
}
const faults = v.array(v.strictObject({ place: v.string(), message: v.string() }));
/** `faults` are what a reviewer should look at although it is no error. */
export interface AddDocumentAnswer {
  readonly sha256: string;
  readonly faults: readonly DocumentFault[];
}
export const addDocumentAnswerSchema: v.GenericSchema<AddDocumentAnswer> = v.strictObject({ sha256, faults });
export interface FaultyDocumentAnswer {
  readonly problem: "faulty-document";
  readonly reason: string;
  readonly faults: readonly DocumentFault[];
}
export const faultyDocumentSchema: v.GenericSchema<FaultyDocumentAnswer> = v.strictObject({
  problem: v.literal("faulty-document"),
  reason: v.string(),
  faults,
});

export interface SignDocumentRequest {
  readonly sha256: string;
  readonly password: string;
  readonly registration: string;
}
export const signDocumentRequestSchema: v.GenericSchema<SignDocumentRequest> = v.strictObject({
  sha256,
  password: passwordText,
  registration: shownName,
});
export const publishDocumentRequestSchema: v.GenericSchema<{ readonly sha256: string }> = v.strictObject({
  sha256,
});
export const documentAnswerSchema: v.GenericSchema<{ readonly document: DocumentEntry }> = v.strictObject({
  document: documentEntry,
});

export interface FitRequest {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly name: string;
}
export const fitRequestSchema: v.GenericSchema<FitRequest> = v.strictObject({ ...dayRange, name: shownName });
/** On children that the calibration has not seen; errors are (estimate - scale) / scale. */
export interface FitAccuracy {
  readonly meanErrorPercent: number;
  readonly rmspe: number;
  readonly within10Percent: number;
  readonly within20Percent: number;
  readonly coveragePercent: number;
}
export interface FitAnswer {
  /** What `POST /api/documents` stores as a calibration. */
  readonly content: string;
  readonly label: string;
  /** Children it was made from. */
  readonly rows: number;
  readonly leftOut: readonly { readonly reason: string; readonly rows: number }[];
  /** There were earlier ones; only the latest were taken. */
  readonly more: boolean;
  /** Absent where there are too few children to judge it on others. */
  readonly accuracy?:
    | {
        readonly before: FitAccuracy;
        readonly after: FitAccuracy;
        readonly within10Gain: { readonly value: number; readonly low: number; readonly high: number };
      }
    | undefined;
  readonly shiftWithinPercent: number;
  readonly childrenForOnePercent: number;
}
const fitAccuracy: v.GenericSchema<FitAccuracy> = v.strictObject({
  meanErrorPercent: number,
  rmspe: number,
  within10Percent: number,
  within20Percent: number,
  coveragePercent: number,
});
export const fitAnswerSchema: v.GenericSchema<FitAnswer> = v.strictObject({
  content: v.string(),
  label: v.string(),
  rows: count,
  leftOut: v.array(v.strictObject({ reason: v.string(), rows: count })),
  more: v.boolean(),
  accuracy: v.optional(
    v.strictObject({
      before: fitAccuracy,
      after: fitAccuracy,
      within10Gain: v.strictObject({ value: number, low: number, high: number }),
    }),
  ),
  shiftWithinPercent: number,
  childrenForOnePercent: number,
});
