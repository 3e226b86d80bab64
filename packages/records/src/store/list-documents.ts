import type { Kysely } from "kysely";
import type {
  DocumentEntry,
  DocumentKind,
  DocumentsAnswer,
  WholeDocument,
} from "../department/documents-wire.ts";
import { contentOf, inForceNow, needsOf } from "./document-state.ts";
import { countingSignatures, reviewersNow, signaturesOf } from "./documents.ts";
import { type NameOf, namesOf } from "./names-of.ts";
import type { DocumentRow, PublicationRow, Tables } from "./tables.ts";

/** Documents and publications in one answer; earlier ones are found by their hash in the audit log. */
const LONGEST = 50;

const columns = ["site", "sha256", "kind", "label", "at", "by"] as const;

/** What a state is made from beside the document; read once for all of them. */
interface Surroundings {
  readonly inForce: PublicationRow | undefined;
  readonly reviewers: ReadonlySet<string>;
  readonly nameOf: NameOf;
}

/** The documents of a kind, the latest first, with what each needs and has now, and what was in force when. */
export async function listDocuments(
  db: Kysely<Tables>,
  { site, kind }: { readonly site: string; readonly kind: DocumentKind },
): Promise<DocumentsAnswer> {
  const around = await surroundings(db, { site, kind });
  const rows = await db
    .selectFrom("document")
    .select(columns)
    .where("site", "=", site)
    .where("kind", "=", kind)
    .orderBy("at", "desc")
    .limit(LONGEST)
    .execute();
  const documents: DocumentEntry[] = [];
  for (const row of rows) documents.push(await entryOf(db, row, around));
  const publications = await db
    .selectFrom("publication")
    .selectAll()
    .where("site", "=", site)
    .where("kind", "=", kind)
    .orderBy("position", "desc")
    .limit(LONGEST)
    .execute();
  return {
    documents,
    publications: publications.map(({ position, sha256, at, by }) => ({
      position,
      sha256,
      at,
      by: around.nameOf(by),
    })),
  };
}

export async function findDocument(
  db: Kysely<Tables>,
  { site, sha256 }: { readonly site: string; readonly sha256: string },
): Promise<WholeDocument | undefined> {
  const row = await db
    .selectFrom("document")
    .select(columns)
    .where("site", "=", site)
    .where("sha256", "=", sha256)
    .executeTakeFirst();
  if (row === undefined) return undefined;
  const around = await surroundings(db, { site, kind: row.kind });
  return { document: await entryOf(db, row, around), content: await contentOf(db, row) };
}

async function surroundings(
  db: Kysely<Tables>,
  of: { readonly site: string; readonly kind: string },
): Promise<Surroundings> {
  return {
    inForce: await inForceNow(db, of),
    reviewers: await reviewersNow(db, of.site),
    nameOf: await namesOf(db, of.site),
  };
}

async function entryOf(
  db: Kysely<Tables>,
  row: Omit<DocumentRow, "content">,
  { inForce, reviewers, nameOf }: Surroundings,
): Promise<DocumentEntry> {
  const { site, sha256, kind, label, at, by } = row;
  const { signatures: need, because } = await needsOf(db, row, inForce);
  const signatures = await signaturesOf(db, { site, sha256 });
  const counting = countingSignatures(signatures, { by, need, reviewers });
  const once = await db
    .selectFrom("publication")
    .select("position")
    .where("site", "=", site)
    .where("kind", "=", kind)
    .where("sha256", "=", sha256)
    .limit(1)
    .executeTakeFirst();
  return {
    sha256,
    kind: kind as DocumentKind,
    label,
    at,
    by: nameOf(by),
    signatures: signatures.map((signature) => ({
      person: nameOf(signature.signer),
      role: signature.role,
      registration: signature.registration ?? "",
      at: signature.at,
      counts: counting.includes(signature),
    })),
    needs: { signatures: need, have: counting.length, because },
    published: once !== undefined,
    inForce: inForce?.sha256 === sha256,
  };
}
