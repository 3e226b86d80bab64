import { err, ok, type Result } from "@steelyard/core/result";
import type { Kysely } from "kysely";
import type { DocumentFault, DocumentKind } from "../department/documents-wire.ts";
import { readDocument } from "../documents/read-document.ts";
import { sha256 } from "./audit-hash.ts";
import { inForceNow, needsOf } from "./document-state.ts";
import { withSiteLocked } from "./site-lock.ts";
import type { SignatureRow, Tables } from "./tables.ts";

export type DocumentIssue =
  | { readonly type: "faulty-document"; readonly faults: readonly DocumentFault[] }
  | { readonly type: "unknown-document" }
  | { readonly type: "signed-already" }
  /** Whoever signs must be a reviewer at this moment. */
  | { readonly type: "not-a-reviewer" }
  /** Two pairs of eyes are needed, and these wrote it. */
  | { readonly type: "own-work" }
  | { readonly type: "needs-signatures"; readonly have: number; readonly need: number };

interface Who {
  readonly site: string;
  /** `person:<id>`. */
  readonly actor: string;
}

/** Keeps a sound document in its one form; the same content twice is one document. */
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
): Promise<Result<{ readonly sha256: string; readonly remarks: readonly DocumentFault[] }, DocumentIssue>> {
  const read = readDocument({ kind, content });
  if (!read.ok) return err({ type: "faulty-document", faults: read.error });
  const name = sha256(read.value.content);
  return withSiteLocked(db, { site, clock }, async ({ trx, at, note }) => {
    const known = await trx
      .selectFrom("document")
      .select("sha256")
      .where("site", "=", site)
      .where("sha256", "=", name)
      .executeTakeFirst();
    if (known === undefined) {
      await trx
        .insertInto("document")
        .values({ site, sha256: name, kind, label, content: read.value.content, at, by: actor })
        .execute();
      await note({ actor, action: "document.add", subject: name, detail: { kind } });
    }
    return ok({ sha256: name, remarks: read.value.remarks });
  });
}

/** Signs one content, and no other: a change is another document. Whether the signer may is looked up here, not believed. */
export async function signDocument(
  db: Kysely<Tables>,
  clock: () => string,
  {
    site,
    actor,
    sha256: name,
    registration,
  }: Who & { readonly sha256: string; readonly registration: string },
): Promise<Result<void, DocumentIssue>> {
  return withSiteLocked(db, { site, clock }, async ({ trx, at, note }) => {
    const document = await trx
      .selectFrom("document")
      .selectAll()
      .where("site", "=", site)
      .where("sha256", "=", name)
      .executeTakeFirst();
    if (document === undefined) return err({ type: "unknown-document" });
    if (!(await reviewersNow(trx, site)).has(actor)) return err({ type: "not-a-reviewer" });
    const { signatures } = await needsOf(trx, document, await inForceNow(trx, { site, kind: document.kind }));
    if (signatures > 1 && document.by === actor) return err({ type: "own-work" });
    const earlier = await signaturesOf(trx, { site, sha256: name });
    if (earlier.some(({ signer }) => signer === actor)) return err({ type: "signed-already" });
    await trx
      .insertInto("signature")
      .values({ site, sha256: name, signer: actor, role: "reviewer", registration, at })
      .execute();
    await note({ actor, action: "document.sign", subject: name, detail: { kind: document.kind } });
    return ok(undefined);
  });
}

/**
 * Puts a document in force from now on; an earlier one comes back the same way. How many signatures it needs follows from the document and the
 * one in force; those count whose signers are reviewers now.
 */
export async function publishDocument(
  db: Kysely<Tables>,
  clock: () => string,
  { site, actor, sha256: name }: Who & { readonly sha256: string },
): Promise<Result<void, DocumentIssue>> {
  return withSiteLocked(db, { site, clock }, async ({ trx, at, note }) => {
    const document = await trx
      .selectFrom("document")
      .selectAll()
      .where("site", "=", site)
      .where("sha256", "=", name)
      .executeTakeFirst();
    if (document === undefined) return err({ type: "unknown-document" });
    const kind = document.kind as DocumentKind;
    // What an earlier version of this software let in is not in force by a later one without being looked at.
    const read = readDocument({ kind, content: document.content });
    if (!read.ok) return err({ type: "faulty-document", faults: read.error });
    const needs = await needsOf(trx, document, await inForceNow(trx, { site, kind }));
    const counting = countingSignatures(await signaturesOf(trx, { site, sha256: name }), {
      by: document.by,
      need: needs.signatures,
      reviewers: await reviewersNow(trx, site),
    });
    if (counting.length < needs.signatures) {
      return err({ type: "needs-signatures", have: counting.length, need: needs.signatures });
    }
    const last = await trx
      .selectFrom("publication")
      .select(({ fn }) => fn.max<number | null>("position").as("position"))
      .where("site", "=", site)
      .where("kind", "=", kind)
      .executeTakeFirst();
    const position = (last?.position ?? 0) + 1;
    const signers = counting.map(({ signer }) => signer).join(",");
    await trx
      .insertInto("publication")
      .values({ site, position, kind, sha256: name, at, by: actor, signers })
      .execute();
    await note({ actor, action: "document.publish", subject: name, detail: { kind, position } });
    return ok(undefined);
  });
}

/** The signatures that a publication may rest on, the first ones first. */
export function countingSignatures<S extends Pick<SignatureRow, "signer">>(
  signatures: readonly S[],
  {
    by,
    need,
    reviewers,
  }: { readonly by: string; readonly need: number; readonly reviewers: ReadonlySet<string> },
): readonly S[] {
  return signatures.filter(({ signer }) => reviewers.has(signer) && (need === 1 || signer !== by));
}

/** Actors of the people who are reviewers of the site at this moment. */
export async function reviewersNow(db: Kysely<Tables>, site: string): Promise<ReadonlySet<string>> {
  const rows = await db
    .selectFrom("person")
    .select(["id", "roles"])
    .where("site", "=", site)
    .where("state", "=", "active")
    .execute();
  return new Set(
    rows.filter(({ roles }) => roles.split(",").includes("reviewer")).map(({ id }) => `person:${id}`),
  );
}

export function signaturesOf(
  db: Kysely<Tables>,
  { site, sha256: name }: { readonly site: string; readonly sha256: string },
): Promise<SignatureRow[]> {
  return db
    .selectFrom("signature")
    .selectAll()
    .where("site", "=", site)
    .where("sha256", "=", name)
    .orderBy("at")
    .orderBy("signer")
    .execute();
}
