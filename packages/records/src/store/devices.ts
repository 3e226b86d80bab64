import type { Kysely } from "kysely";
import { sha256 } from "./audit-hash.ts";
import { withSiteLocked } from "./site-lock.ts";
import type { Tables } from "./tables.ts";

export interface Device {
  readonly id: string;
  readonly site: string;
  readonly name: string;
  readonly enrolledAt: string;
  readonly revokedAt?: string;
}

export interface EnrolRequest {
  readonly site: string;
  readonly actor: string;
  /** UUID. */
  readonly id: string;
  readonly name: string;
  /** At least 32 signs of chance; only its hash is kept, so it can be shown once and never again. */
  readonly token: string;
}

/** Shorter ones could be guessed. */
const SHORTEST_TOKEN = 32;

export async function enrolDevice(
  db: Kysely<Tables>,
  clock: () => string,
  { site, actor, id, name, token }: EnrolRequest,
): Promise<Device> {
  if (token.length < SHORTEST_TOKEN) {
    throw new RangeError(
      `Cannot enrol a device as its token must have at least ${SHORTEST_TOKEN} signs: current length is ${token.length}`,
    );
  }
  return withSiteLocked(db, { site, clock }, async ({ trx, at, note }) => {
    const row = { id, site, name, token_sha256: sha256(token), enrolled_at: at, revoked_at: null };
    await trx.insertInto("device").values(row).execute();
    await note({ actor, action: "device.enrol", subject: id, detail: { name } });
    return { id, site, name, enrolledAt: at };
  });
}

/** The device that a token belongs to, unless it was revoked. A hash is looked up, so timing tells nothing of the token. */
export async function findDevice(db: Kysely<Tables>, token: string): Promise<Device | undefined> {
  const row = await db
    .selectFrom("device")
    .selectAll()
    .where("token_sha256", "=", sha256(token))
    .where("revoked_at", "is", null)
    .executeTakeFirst();
  return row === undefined
    ? undefined
    : { id: row.id, site: row.site, name: row.name, enrolledAt: row.enrolled_at };
}

export async function listDevices(db: Kysely<Tables>, site: string): Promise<readonly Device[]> {
  const rows = await db
    .selectFrom("device")
    .selectAll()
    .where("site", "=", site)
    .orderBy("enrolled_at")
    .orderBy("id")
    .execute();
  return rows.map(({ id, name, enrolled_at, revoked_at }) => ({
    id,
    site,
    name,
    enrolledAt: enrolled_at,
    ...(revoked_at === null ? {} : { revokedAt: revoked_at }),
  }));
}

/** `false` where there is no such device that is not revoked already. */
export async function revokeDevice(
  db: Kysely<Tables>,
  clock: () => string,
  { site, actor, id }: { readonly site: string; readonly actor: string; readonly id: string },
): Promise<boolean> {
  return withSiteLocked(db, { site, clock }, async ({ trx, at, note }) => {
    const { numUpdatedRows } = await trx
      .updateTable("device")
      .set({ revoked_at: at })
      .where("site", "=", site)
      .where("id", "=", id)
      .where("revoked_at", "is", null)
      .executeTakeFirst();
    if (numUpdatedRows === 0n) return false;
    await note({ actor, action: "device.revoke", subject: id });
    return true;
  });
}
