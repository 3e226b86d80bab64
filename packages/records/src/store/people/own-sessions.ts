import type { Kysely } from "kysely";
import { sha256 } from "../audit-hash.ts";
import { withSiteLocked } from "../site-lock.ts";
import type { Tables } from "../tables.ts";
import type { Person } from "./person.ts";
import type { SessionLimits } from "./sessions.ts";

/** A session as its person may see it: the id names it and opens nothing. */
export interface OwnSession {
  readonly id: string;
  readonly startedAt: string;
  readonly usedAt: string;
  readonly isThis: boolean;
}

const idOf = (tokenSha256: string): string => sha256(`session ${tokenSha256}`).slice(0, 32);

/** The sessions of a person that still hold, the latest used first; `token` is the one that asks. */
export async function listOwnSessions(
  db: Kysely<Tables>,
  clock: () => string,
  order: { readonly person: string; readonly token: string; readonly limits: SessionLimits },
): Promise<readonly OwnSession[]> {
  const { person, token, limits } = order;
  const rows = await db.selectFrom("session").selectAll().where("person", "=", person).execute();
  const now = Date.parse(clock());
  const own = sha256(token);
  return rows
    .filter(
      ({ started_at, used_at }) =>
        now - Date.parse(started_at) < limits.absoluteMs && now - Date.parse(used_at) < limits.idleMs,
    )
    .map(({ token_sha256, started_at, used_at }) => ({
      id: idOf(token_sha256),
      startedAt: started_at,
      usedAt: used_at,
      isThis: token_sha256 === own,
    }))
    .sort((a, b) => b.usedAt.localeCompare(a.usedAt));
}

/** Ends one other session of the person, or without an `id` all of them; never the one of `keepToken`. How many ended. */
export async function endOwnSessions(
  db: Kysely<Tables>,
  clock: () => string,
  order: { readonly person: Person; readonly keepToken: string; readonly id?: string | undefined },
): Promise<number> {
  const { person, keepToken, id } = order;
  return withSiteLocked(db, { site: person.site, clock }, async ({ trx, note }) => {
    const rows = await trx
      .selectFrom("session")
      .select("token_sha256")
      .where("person", "=", person.id)
      .where("token_sha256", "!=", sha256(keepToken))
      .execute();
    const tokens = rows
      .map(({ token_sha256 }) => token_sha256)
      .filter((one) => id === undefined || idOf(one) === id);
    if (tokens.length === 0) return 0;
    await trx.deleteFrom("session").where("token_sha256", "in", tokens).execute();
    const detail = { sessions: tokens.length };
    await note({ actor: `person:${person.id}`, action: "session.end-others", subject: person.id, detail });
    return tokens.length;
  });
}
