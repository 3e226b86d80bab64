import { err, ok, type Result } from "@steelyard/core/result";
import type { Kysely } from "kysely";
import { sha256 } from "./audit-hash.ts";
import { type LockedSite, withSiteLocked } from "./site-lock.ts";
import type { Tables } from "./tables.ts";

/** What a site computes by and has to sign. */
export type DocumentKind = "formulary" | "calibration";

export interface SiteDocument {
  readonly kind: DocumentKind;
  /** Of the content; the name of the document everywhere. */
  readonly sha256: string;
  readonly label: string;
  readonly content: string;
  readonly at: string;
  readonly by: string;
  readonly signatures: readonly { readonly signer: string; readonly role: string; readonly at: string }[];
}

export type DocumentIssue =
  | { readonly type: "unknown-document"; readonly sha256: string }
  | { readonly type: "signed-already"; readonly signer: string }
  /** Of enough people, of whom at least one did not write it: two pairs of eyes. */
  | { readonly type: "needs-signatures"; readonly have: number; readonly need: number }
  | { readonly type: "needs-other-eyes"; readonly by: string };

interface Who {
  readonly site: string;
  readonly actor: string;
}

/** Keeps a document as it is; the same content twice is one document. */
export async function addDocument(
  db: Kysely<Tables>,
  clock: () => string,
  {
    site,
    actor,
    kind,
    label,
    content,
  }: Who & { readonly kind: DocumentKind; readonly label: string; readonly content: string },
): Promise<string> {
  const name = sha256(content);
  return withSiteLocked(db, { site, clock }, async ({ trx, at, note, id }) => {
    if ((await find(trx, id, name)) !== undefined) return name;
    await trx
      .insertInto("document")
      .values({ site, sha256: name, kind, label, content, at, by: actor })
      .execute();
    await note({ actor, action: "document.add", subject: name, detail: { kind, label } });
    return name;
  });
}

export async function signDocument(
  db: Kysely<Tables>,
  clock: () => string,
  { site, actor, sha256: name, role }: Who & { readonly sha256: string; readonly role: string },
): Promise<Result<void, DocumentIssue>> {
  return withSiteLocked(db, { site, clock }, async ({ trx, at, note, id }) => {
    const document = await find(trx, id, name);
    if (document === undefined) return err({ type: "unknown-document", sha256: name });
    if (document.signatures.some(({ signer }) => signer === actor)) {
      return err({ type: "signed-already", signer: actor });
    }
    await trx.insertInto("signature").values({ site, sha256: name, signer: actor, role, at }).execute();
    await note({ actor, action: "document.sign", subject: name, detail: { role } });
    return ok(undefined);
  });
}

/**
 * Puts a document in force from now on; an earlier one comes back the same way. `needSignatures` is the site's rule:
 * 1, or 2 where it holds a high-risk medicine, and then one signer at least is not who wrote it.
 */
export async function publishDocument(
  db: Kysely<Tables>,
  clock: () => string,
  {
    site,
    actor,
    sha256: name,
    needSignatures,
  }: Who & { readonly sha256: string; readonly needSignatures: number },
): Promise<Result<void, DocumentIssue>> {
  return withSiteLocked(db, { site, clock }, async ({ trx, at, note, id }) => {
    const document = await find(trx, id, name);
    if (document === undefined) return err({ type: "unknown-document", sha256: name });
    const { signatures, by, kind } = document;
    if (signatures.length < needSignatures) {
      return err({ type: "needs-signatures", have: signatures.length, need: needSignatures });
    }
    if (needSignatures > 1 && signatures.every(({ signer }) => signer === by)) {
      return err({ type: "needs-other-eyes", by });
    }
    const last = await trx
      .selectFrom("publication")
      .select(({ fn }) => fn.max<number | null>("position").as("position"))
      .where("site", "=", site)
      .where("kind", "=", kind)
      .executeTakeFirst();
    const position = (last?.position ?? 0) + 1;
    await trx
      .insertInto("publication")
      .values({ site, position, kind, sha256: name, at, by: actor })
      .execute();
    await note({ actor, action: "document.publish", subject: name, detail: { kind, position } });
    return ok(undefined);
  });
}

/** The document in force; none was published where it is `undefined`. */
export async function publishedDocument(
  db: Kysely<Tables>,
  { site, kind }: { readonly site: string; readonly kind: DocumentKind },
): Promise<SiteDocument | undefined> {
  const row = await db
    .selectFrom("publication")
    .select("sha256")
    .where("site", "=", site)
    .where("kind", "=", kind)
    .orderBy("position", "desc")
    .limit(1)
    .executeTakeFirst();
  return row === undefined ? undefined : find(db, site, row.sha256);
}

async function find(
  db: Kysely<Tables> | LockedSite["trx"],
  site: string,
  name: string,
): Promise<SiteDocument | undefined> {
  const row = await db
    .selectFrom("document")
    .selectAll()
    .where("site", "=", site)
    .where("sha256", "=", name)
    .executeTakeFirst();
  if (row === undefined) return undefined;
  const signatures = await db
    .selectFrom("signature")
    .select(["signer", "role", "at"])
    .where("site", "=", site)
    .where("sha256", "=", name)
    .orderBy("at")
    .orderBy("signer")
    .execute();
  const { kind, label, content, at, by } = row;
  return { kind: kind as DocumentKind, sha256: name, label, content, at, by, signatures };
}
