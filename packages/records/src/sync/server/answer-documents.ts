import type { DocumentKind } from "../../department/documents-wire.ts";
import type { Store } from "../../store/store.ts";
import type { DocumentInForce, DocumentsInForce, HeldDocuments } from "../wire/document-schema.ts";
import { syncProtocol } from "../wire/sync-protocol.ts";
import type { Sender } from "./accept-push.ts";

/**
 * The formulary and the calibration in force at the site of a device, signed; what it holds already is left out, and what is not in force any
 * more is `null`. Handing one out stands in the audit log.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { openStore } from "@steelyard/records/store";
 * import { answerDocuments } from "@steelyard/records/sync-server";
 *
 * const newId = () => "00000000-0000-4000-8000-000000000001";
 * const options = { database: { type: "sqlite", file: ":memory:" }, clock: () => "2026-11-25T03:12:00.000Z", newId } as const;
 * const store = await openStore(options);
 * const answer = await answerDocuments(store, { site: "resus", device: "d" }, { protocol: 1 });
 * assert.deepEqual(answer, { protocol: 1, formulary: null, calibration: null });
 * await store.close();
 * ```
 */
export async function answerDocuments(
  store: Store,
  sender: Sender,
  held: HeldDocuments,
): Promise<DocumentsInForce> {
  return {
    protocol: syncProtocol,
    ...(await answerOne(store, sender, { kind: "formulary", held: held.formulary })),
    ...(await answerOne(store, sender, { kind: "calibration", held: held.calibration })),
  };
}

async function answerOne(
  store: Store,
  { site, device }: Sender,
  { kind, held }: { readonly kind: DocumentKind; readonly held: string | undefined },
): Promise<Partial<Record<DocumentKind, DocumentInForce | null>>> {
  const found = await store.handedOut({ site, kind, ...(held === undefined ? {} : { held }) });
  if (found === "held") return {};
  if (found === undefined) return { [kind]: null };
  await store.note({
    site,
    actor: `device:${device}`,
    action: "document.handed-out",
    subject: found.sha256,
    detail: { kind },
  });
  return { [kind]: found };
}
