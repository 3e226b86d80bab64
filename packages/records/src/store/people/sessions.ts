import type { Kysely } from "kysely";
import { sha256 } from "../audit-hash.ts";
import { withSiteLocked } from "../site-lock.ts";
import type { Tables } from "../tables.ts";
import { type Person, personOf } from "./person.ts";

/** A use is written down at most so often; a session may end this much earlier than its idle limit. */
const TOUCH_MS = 60_000;

export interface SessionLimits {
  readonly idleMs: number;
  readonly absoluteMs: number;
}

/** A session begins with a token of its own at every sign-in: none that was there before is taken over. */
export async function startSession(
  db: Kysely<Tables>,
  clock: () => string,
  { person, token, by }: { readonly person: Person; readonly token: string; readonly by: string },
): Promise<string> {
  return withSiteLocked(db, { site: person.site, clock }, async ({ trx, at, note }) => {
    await trx
      .insertInto("session")
      .values({ token_sha256: sha256(token), person: person.id, started_at: at, used_at: at })
      .execute();
    await trx.updateTable("person").set({ last_sign_in_at: at }).where("id", "=", person.id).execute();
    await note({ actor: `person:${person.id}`, action: "session.start", subject: person.id, detail: { by } });
    return at;
  });
}

/** Who a token belongs to, as the store knows the person at this moment; nobody where the session is over. */
export async function findSession(
  db: Kysely<Tables>,
  clock: () => string,
  { token, limits }: { readonly token: string; readonly limits: SessionLimits },
): Promise<{ readonly person: Person; readonly startedAt: string } | undefined> {
  const row = await db
    .selectFrom("session")
    .innerJoin("person", "person.id", "session.person")
    .selectAll("person")
    .select(["session.started_at", "session.used_at"])
    .where("session.token_sha256", "=", sha256(token))
    .where("person.state", "=", "active")
    .executeTakeFirst();
  if (row === undefined) return undefined;
  const now = clock();
  const since = (at: string): number => Date.parse(now) - Date.parse(at);
  if (since(row.started_at) >= limits.absoluteMs || since(row.used_at) >= limits.idleMs) {
    await dropSession(db, token);
    return undefined;
  }
  if (since(row.used_at) >= TOUCH_MS) {
    await db.updateTable("session").set({ used_at: now }).where("token_sha256", "=", sha256(token)).execute();
  }
  return { person: personOf(row), startedAt: row.started_at };
}

async function dropSession(db: Kysely<Tables>, token: string): Promise<void> {
  await db.deleteFrom("session").where("token_sha256", "=", sha256(token)).execute();
}

export async function endSession(
  db: Kysely<Tables>,
  clock: () => string,
  { person, token }: { readonly person: Person; readonly token: string },
): Promise<void> {
  await withSiteLocked(db, { site: person.site, clock }, async ({ trx, note }) => {
    await trx.deleteFrom("session").where("token_sha256", "=", sha256(token)).execute();
    await note({ actor: `person:${person.id}`, action: "session.end", subject: person.id });
  });
}
