import { err, ok, type Result } from "@steelyard/core/result";
import type { Kysely } from "kysely";
import { sha256 } from "../audit-hash.ts";
import { withSiteLocked } from "../site-lock.ts";
import type { PasskeyRow, Tables } from "../tables.ts";
import type { Person } from "./person.ts";

/** More than a person has devices; without a bound a session could fill the disk. */
const MOST_PASSKEYS = 20;

export interface NewPasskey {
  readonly id: string;
  readonly credentialId: string;
  readonly publicKey: string;
  readonly counter: number;
  readonly name: string;
}

export async function addPasskey(
  db: Kysely<Tables>,
  clock: () => string,
  { person, passkey }: { readonly person: Person; readonly passkey: NewPasskey },
): Promise<Result<void, { readonly type: "known-passkey" } | { readonly type: "too-many-passkeys" }>> {
  return withSiteLocked(db, { site: person.site, clock }, async ({ trx, at, note }) => {
    const { id, credentialId, publicKey, counter, name } = passkey;
    const there = await trx
      .selectFrom("passkey")
      .select("id")
      .where("credential_id", "=", credentialId)
      .executeTakeFirst();
    if (there !== undefined) return err({ type: "known-passkey" });
    if ((await listPasskeys(trx, person.id)).length >= MOST_PASSKEYS)
      return err({ type: "too-many-passkeys" });
    const row = { id, person: person.id, credential_id: credentialId, public_key: publicKey, counter, name };
    await trx
      .insertInto("passkey")
      .values({ ...row, at, last_used_at: null })
      .execute();
    await note({ actor: `person:${person.id}`, action: "passkey.add", subject: id });
    return ok(undefined);
  });
}

export function listPasskeys(db: Kysely<Tables>, person: string): Promise<PasskeyRow[]> {
  return db
    .selectFrom("passkey")
    .selectAll()
    .where("person", "=", person)
    .orderBy("at")
    .orderBy("id")
    .execute();
}

export function findPasskey(db: Kysely<Tables>, credentialId: string): Promise<PasskeyRow | undefined> {
  return db.selectFrom("passkey").selectAll().where("credential_id", "=", credentialId).executeTakeFirst();
}

/** `false` where the counter went back meanwhile: two authenticators answer with one key. */
export async function usePasskey(
  db: Kysely<Tables>,
  clock: () => string,
  { id, from, to }: { readonly id: string; readonly from: number; readonly to: number },
): Promise<boolean> {
  const { numUpdatedRows } = await db
    .updateTable("passkey")
    .set({ counter: to, last_used_at: clock() })
    .where("id", "=", id)
    .where("counter", "=", from)
    .executeTakeFirst();
  return numUpdatedRows === 1n;
}

export async function removePasskey(
  db: Kysely<Tables>,
  clock: () => string,
  { person, id, keepToken }: { readonly person: Person; readonly id: string; readonly keepToken: string },
): Promise<boolean> {
  return withSiteLocked(db, { site: person.site, clock }, async ({ trx, note }) => {
    const { numDeletedRows } = await trx
      .deleteFrom("passkey")
      .where("id", "=", id)
      .where("person", "=", person.id)
      .executeTakeFirst();
    if (numDeletedRows === 0n) return false;
    // Whoever signed in by the lost key is out.
    await trx
      .deleteFrom("session")
      .where("person", "=", person.id)
      .where("token_sha256", "!=", sha256(keepToken))
      .execute();
    await note({ actor: `person:${person.id}`, action: "passkey.remove", subject: id });
    return true;
  });
}

export interface Challenge {
  readonly id: string;
  /** Absent at a sign-in: nobody is known yet. */
  readonly person?: string;
  readonly challenge: string;
  readonly expiresAt: string;
}

export async function addChallenge(
  db: Kysely<Tables>,
  clock: () => string,
  { id, person, challenge, expiresAt }: Challenge,
): Promise<void> {
  await db.deleteFrom("challenge").where("expires_at", "<=", clock()).execute();
  await db
    .insertInto("challenge")
    .values({ id, person: person ?? null, challenge, expires_at: expiresAt })
    .execute();
}

/** Gives a challenge once, and only to whom it was made for. */
export async function takeChallenge(
  db: Kysely<Tables>,
  clock: () => string,
  by: { readonly id: string } | { readonly person: string },
): Promise<readonly string[]> {
  const rows = await db
    .deleteFrom("challenge")
    .where((where) =>
      "id" in by
        ? where.and([where("id", "=", by.id), where("person", "is", null)])
        : where("person", "=", by.person),
    )
    .returning(["challenge", "expires_at"])
    .execute();
  const now = clock();
  return rows.filter(({ expires_at }) => expires_at > now).map(({ challenge }) => challenge);
}
