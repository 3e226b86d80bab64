import type { Kysely } from "kysely";
import { sha256 } from "../audit-hash.ts";
import { withSiteLocked } from "../site-lock.ts";
import type { Tables } from "../tables.ts";
import type { Person } from "./person.ts";

export async function readPassword(db: Kysely<Tables>, person: string): Promise<string | undefined> {
  const row = await db
    .selectFrom("credential")
    .select("password")
    .where("person", "=", person)
    .executeTakeFirst();
  return row?.password;
}

/** Another password; every session but `keepToken` ends. */
export async function changePassword(
  db: Kysely<Tables>,
  clock: () => string,
  {
    person,
    password,
    keepToken,
  }: { readonly person: Person; readonly password: string; readonly keepToken: string },
): Promise<void> {
  await withSiteLocked(db, { site: person.site, clock }, async ({ trx, at, note }) => {
    await trx
      .updateTable("credential")
      .set({ password, set_at: at })
      .where("person", "=", person.id)
      .execute();
    await trx
      .deleteFrom("session")
      .where("person", "=", person.id)
      .where("token_sha256", "!=", sha256(keepToken))
      .execute();
    await note({ actor: `person:${person.id}`, action: "password.change", subject: person.id });
  });
}

/** The same password under a higher cost; nobody notices. */
export async function rehashPassword(
  db: Kysely<Tables>,
  { person, from, to }: { readonly person: string; readonly from: string; readonly to: string },
): Promise<void> {
  await db
    .updateTable("credential")
    .set({ password: to })
    .where("person", "=", person)
    .where("password", "=", from)
    .execute();
}
