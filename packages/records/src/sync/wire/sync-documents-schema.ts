import * as v from "valibot";
import { syncProtocol } from "./sync-protocol.ts";

const protocol = v.literal(syncProtocol);
const sha256 = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, "must be 64 hexadecimal digits"));

/** A document in force, as it was signed. */
export interface SyncedDocument {
  /** SHA-256 of `content`, hexadecimal; the name under which the device holds it. */
  readonly sha256: string;
  /** JSON: a signed formulary, or the profile of a calibration. */
  readonly content: string;
  readonly signatures: readonly { readonly name: string; readonly role: string; readonly date: string }[];
}
const document: v.GenericSchema<SyncedDocument> = v.strictObject({
  sha256,
  content: v.string(),
  signatures: v.array(v.strictObject({ name: v.string(), role: v.string(), date: v.string() })),
});

/** What a device holds of its department, by the hash that came with it. */
export interface SyncDocumentsRequest {
  readonly protocol: typeof syncProtocol;
  readonly formulary?: string;
  readonly calibration?: string;
}
export const syncDocumentsQuerySchema: v.GenericSchema<unknown, SyncDocumentsRequest> = v.strictObject({
  // From a query, so the number comes as text.
  protocol: v.pipe(v.literal(`${syncProtocol}`), v.transform(Number), protocol),
  formulary: v.optional(sha256),
  calibration: v.optional(sha256),
}) as unknown as v.GenericSchema<unknown, SyncDocumentsRequest>;

/** `null`: none is in force. Absent: what the device holds is. */
export interface SyncDocumentsAnswer {
  readonly protocol: typeof syncProtocol;
  readonly formulary?: SyncedDocument | null | undefined;
  readonly calibration?: SyncedDocument | null | undefined;
}
export const syncDocumentsAnswerSchema: v.GenericSchema<SyncDocumentsAnswer> = v.strictObject({
  protocol,
  formulary: v.optional(v.nullable(document)),
  calibration: v.optional(v.nullable(document)),
});
