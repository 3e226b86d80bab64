import type { Kysely } from "kysely";
import type { DocumentKind } from "../department/documents-wire.ts";
import { type DocumentNeeds, documentNeeds } from "../documents/document-needs.ts";
import type { DocumentRow, PublicationRow, Tables } from "./tables.ts";

/** The publication in force and its document; none where nothing was published. */
export type InForce = PublicationRow & Pick<DocumentRow, "content">;

export async function inForceNow(
  db: Kysely<Tables>,
  { site, kind }: { readonly site: string; readonly kind: string },
): Promise<InForce | undefined> {
  const publication = await db
    .selectFrom("publication")
    .selectAll()
    .where("site", "=", site)
    .where("kind", "=", kind)
    .orderBy("position", "desc")
    .limit(1)
    .executeTakeFirst();
  if (publication === undefined) return undefined;
  const document = await db
    .selectFrom("document")
    .select("content")
    .where("site", "=", site)
    .where("sha256", "=", publication.sha256)
    .executeTakeFirstOrThrow();
  return { ...publication, content: document.content };
}

/** Content never changes under its hash, so neither do the needs of a pair; reading a formulary for them takes some 50 ms. */
const known = new Map<string, DocumentNeeds>();
const MOST_KNOWN = 1_000;

export function needsOf(
  document: Pick<DocumentRow, "kind" | "sha256" | "content">,
  inForce: InForce | undefined,
): DocumentNeeds {
  const key = `${document.sha256} ${inForce?.sha256 ?? ""}`;
  const earlier = known.get(key);
  if (earlier !== undefined) return earlier;
  const needs = documentNeeds({ kind: document.kind as DocumentKind, content: document.content }, inForce);
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(key, needs);
  return needs;
}
