import * as v from "valibot";
import { sha256 } from "../../department/wire.ts";
import { syncProtocol } from "./sync-protocol.ts";

/** What a device holds, by the hash of its text; absent where it holds none of the department. */
export interface HeldDocuments {
  readonly protocol: typeof syncProtocol;
  readonly formulary?: string | undefined;
  readonly calibration?: string | undefined;
}
export const heldDocumentsSchema: v.GenericSchema<unknown, HeldDocuments> = v.strictObject({
  protocol: v.pipe(v.string(), v.transform(Number), v.literal(syncProtocol)),
  formulary: v.optional(sha256),
  calibration: v.optional(sha256),
}) as unknown as v.GenericSchema<unknown, HeldDocuments>;

/** A document in force, as it is computed by. */
export interface DocumentInForce {
  /** Of the UTF-8 bytes of `content`. */
  readonly sha256: string;
  /** A signed formulary or site profile, as a file of it would be. */
  readonly content: string;
  readonly signatures: readonly { readonly name: string; readonly role: string; readonly date: string }[];
}
const documentInForce: v.GenericSchema<DocumentInForce> = v.strictObject({
  sha256,
  content: v.string(),
  signatures: v.array(v.strictObject({ name: v.string(), role: v.string(), date: v.string() })),
});

/** `null`: none is in force; absent: the device holds the one in force. */
export interface DocumentsInForce {
  readonly protocol: typeof syncProtocol;
  readonly formulary?: DocumentInForce | null | undefined;
  readonly calibration?: DocumentInForce | null | undefined;
}
export const documentsInForceSchema: v.GenericSchema<DocumentsInForce> = v.strictObject({
  protocol: v.literal(syncProtocol),
  formulary: v.optional(v.nullable(documentInForce)),
  calibration: v.optional(v.nullable(documentInForce)),
});
