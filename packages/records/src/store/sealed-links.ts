import type { Kysely } from "kysely";
import { withSiteLocked } from "./site-lock.ts";
import type { Tables } from "./tables.ts";

interface OfCase {
  readonly site: string;
  readonly actor: string;
  readonly caseId: string;
}

/** What somebody of the site sealed for a case on a page; read only with their passphrase, which is not here. The reading is noted. */
export async function readSealedLink(
  db: Kysely<Tables>,
  clock: () => string,
  { site, actor, caseId }: OfCase,
): Promise<string | undefined> {
  return withSiteLocked(db, { site, clock }, async ({ trx, note }) => {
    const row = await trx
      .selectFrom("sealed_link")
      .select("sealed")
      .where("site", "=", site)
      .where("case_id", "=", caseId)
      .executeTakeFirst();
    if (row !== undefined) await note({ actor, action: "link.read", subject: caseId });
    return row?.sealed;
  });
}

/** Keeps a sealed text beside a case in place of the one before, or none; `false` where the site has no such case. */
export async function putSealedLink(
  db: Kysely<Tables>,
  clock: () => string,
  { site, actor, caseId, sealed }: OfCase & { readonly sealed: string | null },
): Promise<boolean> {
  return withSiteLocked(db, { site, clock }, async ({ trx, at, note }) => {
    const known = await trx
      .selectFrom("case_summary")
      .select("case_id")
      .where("site", "=", site)
      .where("case_id", "=", caseId)
      .executeTakeFirst();
    if (known === undefined) return false;
    await trx.deleteFrom("sealed_link").where("site", "=", site).where("case_id", "=", caseId).execute();
    if (sealed !== null) {
      await trx.insertInto("sealed_link").values({ site, case_id: caseId, sealed, at, by: actor }).execute();
    }
    const action = sealed === null ? "link.remove" : "link.write";
    await note({ actor, action, subject: caseId });
    return true;
  });
}
