import type { Kysely } from "kysely";
import type { DocumentKind } from "../department/documents-wire.ts";
import { signedContent } from "../documents/signed-content.ts";
import { sha256 } from "./audit-hash.ts";
import { contentOf, inForceNow } from "./document-state.ts";
import { signaturesOf } from "./documents.ts";
import { namesOf } from "./names-of.ts";
import type { Tables } from "./tables.ts";

/** A document in force as a device gets it. */
export interface HandedOut {
  /** Of `content`, so that the device can check it. */
  readonly sha256: string;
  readonly content: string;
  /** Of the signatures that it was put in force by. */
  readonly signatures: readonly { readonly name: string; readonly role: string; readonly date: string }[];
}

/** Hash of what is handed out for a publication, which never changes; so a device that has it costs no signing. */
const hashes = new Map<string, string>();
const MOST_HASHES = 10_000;

/** The document in force, signed; `undefined` where there is none, `"held"` where the device has it. */
export async function handedOut(
  db: Kysely<Tables>,
  { site, kind, held }: { readonly site: string; readonly kind: DocumentKind; readonly held?: string },
): Promise<HandedOut | "held" | undefined> {
  const inForce = await inForceNow(db, { site, kind });
  if (inForce === undefined) return undefined;
  const key = `${site} ${kind} ${inForce.position} ${inForce.sha256} ${inForce.signers} ${inForce.at}`;
  if (held !== undefined && hashes.get(key) === held) return "held";
  const signers = inForce.signers?.split(",");
  const nameOf = await namesOf(db, site);
  const signatures = (await signaturesOf(db, { site, sha256: inForce.sha256 }))
    .filter(({ signer }) => signers === undefined || signers.includes(signer))
    .map(({ signer, role, registration, at }) => ({
      name: nameOf(signer).name,
      role: registration ?? role,
      date: at.slice(0, 10),
    }));
  const unsigned = await contentOf(db, inForce);
  const content = await signedContent({ kind, content: unsigned, reviewers: signatures, sha256 });
  const own = sha256(content);
  if (hashes.size >= MOST_HASHES) hashes.clear();
  hashes.set(key, own);
  return own === held ? "held" : { sha256: own, content, signatures };
}
