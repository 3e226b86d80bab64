import type { Kysely } from "kysely";
import type { DocumentKind } from "../department/documents-wire.ts";
import { type DocumentNeeds, documentNeeds } from "../documents/document-needs.ts";
import type { DocumentRow, PublicationRow, Tables } from "./tables.ts";

/** The publication in force; none where nothing was published. */
export function inForceNow(
  db: Kysely<Tables>,
  { site, kind }: { readonly site: string; readonly kind: string },
): Promise<PublicationRow | undefined> {
  return db
    .selectFrom("publication")
    .selectAll()
    .where("site", "=", site)
    .where("kind", "=", kind)
    .orderBy("position", "desc")
    .limit(1)
    .executeTakeFirst();
}

/** Over a megabyte for a whole formulary: read only where it is needed. */
export async function contentOf(
  db: Kysely<Tables>,
  { site, sha256 }: { readonly site: string; readonly sha256: string },
): Promise<string> {
  const { content } = await db
    .selectFrom("document")
    .select("content")
    .where("site", "=", site)
    .where("sha256", "=", sha256)
    .executeTakeFirstOrThrow();
  return content;
}

/** Content never changes under its hash, so neither do the needs of a pair; reading formularies for them takes some 100 ms. */
const known = new Map<string, DocumentNeeds>();
const MOST_KNOWN = 1_000;

export async function needsOf(
  db: Kysely<Tables>,
  document: Pick<DocumentRow, "site" | "kind" | "sha256">,
  inForce: PublicationRow | undefined,
): Promise<DocumentNeeds> {
  const key = `${document.sha256} ${inForce?.sha256 ?? ""}`;
  const earlier = known.get(key);
  if (earlier !== undefined) return earlier;
  const needs = documentNeeds(
    { kind: document.kind as DocumentKind, content: await contentOf(db, document) },
    inForce && { content: await contentOf(db, inForce) },
  );
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(key, needs);
  return needs;
}
