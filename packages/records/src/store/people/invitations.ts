import { err, ok, type Result } from "@steelyard/core/result";
import type { Kysely } from "kysely";
import type { Role } from "../../people/principal.ts";
import { sha256 } from "../audit-hash.ts";
import { type LockedSite, withSiteLocked } from "../site-lock.ts";
import type { Tables } from "../tables.ts";
import { findPerson, hasPeople, type Person } from "./person.ts";

export interface InviteOrder {
  readonly site: string;
  readonly actor: string;
  /** UUID of the person to be. */
  readonly id: string;
  readonly name: string;
  readonly roles: readonly Role[];
  /** Only its hash is kept. */
  readonly code: string;
  readonly expiresAt: string;
}

export async function invitePerson(
  db: Kysely<Tables>,
  clock: () => string,
  { site, actor, id, name, roles, code, expiresAt }: InviteOrder,
): Promise<void> {
  await withSiteLocked(db, { site, clock }, async (locked) => {
    await locked.trx
      .insertInto("person")
      .values({ ...blankPerson, id, site, name, roles: roles.join(","), created_at: locked.at })
      .execute();
    await putInvitation(locked, { person: id, code, expiresAt });
    await locked.note({ actor, action: "person.invite", subject: id, detail: { roles: roles.join(",") } });
  });
}

const blankPerson = { login: null, state: "invited", joined_at: null, last_sign_in_at: null } as const;

/** A new one makes the one before it worthless. */
export async function putInvitation(
  { trx }: LockedSite,
  { person, code, expiresAt }: { readonly person: string; readonly code: string; readonly expiresAt: string },
): Promise<void> {
  await trx.deleteFrom("invitation").where("person", "=", person).execute();
  await trx
    .insertInto("invitation")
    .values({ person, code_sha256: sha256(code), expires_at: expiresAt })
    .execute();
}

export interface JoinOrder {
  readonly code: string;
  readonly login: string;
  /** As `people/password` makes it. */
  readonly password: string;
}
/** The code is unknown, used or too old: nobody is told which. */
export type JoinIssue = { readonly type: "wrong-code" } | { readonly type: "login-taken" };

/** Who an invitation that holds is for. */
export async function findInvited(
  db: Kysely<Tables>,
  { code, now }: { readonly code: string; readonly now: string },
): Promise<Person | undefined> {
  const row = await db
    .selectFrom("invitation")
    .select("person")
    .where("code_sha256", "=", sha256(code))
    .where("expires_at", ">", now)
    .executeTakeFirst();
  return row === undefined ? undefined : findPerson(db, { id: row.person });
}

/** Takes an invitation, once, whoever else tries at the same moment. */
export async function joinPerson(
  db: Kysely<Tables>,
  clock: () => string,
  { site, code, login, password }: JoinOrder & { readonly site: string },
): Promise<Result<Person, JoinIssue>> {
  return withSiteLocked<Result<Person, JoinIssue>>(db, { site, clock }, async (locked) => {
    const { trx, at, note } = locked;
    const taken = await trx
      .deleteFrom("invitation")
      .where("code_sha256", "=", sha256(code))
      .where("expires_at", ">", at)
      .returning("person")
      .executeTakeFirst();
    if (taken === undefined) return err({ type: "wrong-code" });
    const invited = await findPerson(trx, { id: taken.person });
    const owner = await findPerson(trx, { login });
    if (invited?.state !== "invited") return err({ type: "wrong-code" });
    if (owner !== undefined && owner.id !== invited.id) throw new LoginTaken();
    await activate(locked, { id: invited.id, login, password });
    await note({ actor: `person:${invited.id}`, action: "person.join", subject: invited.id });
    return ok((await findPerson(trx, { id: invited.id })) as Person);
  }).catch((error: unknown) => {
    if (error instanceof LoginTaken) return err({ type: "login-taken" } as const);
    throw error;
  });
}

/** Thrown inside the transaction, so that the invitation stays. */
class LoginTaken extends Error {}

async function activate(
  { trx, at }: LockedSite,
  { id, login, password }: { readonly id: string; readonly login: string; readonly password: string },
): Promise<void> {
  await trx
    .updateTable("person")
    .set({ login, state: "active", joined_at: at })
    .where("id", "=", id)
    .execute();
  await trx.deleteFrom("credential").where("person", "=", id).execute();
  await trx.insertInto("credential").values({ person: id, password, set_at: at }).execute();
}

export interface SetUpOrder extends JoinOrder {
  readonly site: string;
  readonly id: string;
  readonly name: string;
}

/** The first administrator, by a code that a server printed while nobody was there; ends every such code. */
export async function setUpPeople(
  db: Kysely<Tables>,
  clock: () => string,
  { site, id, name, code, login, password }: SetUpOrder,
): Promise<Result<Person, JoinIssue | { readonly type: "set-up-already" }>> {
  return withSiteLocked(db, { site, clock }, async (locked) => {
    const { trx, at, note } = locked;
    if (await hasPeople(trx, site)) return err({ type: "set-up-already" });
    if (!(await knowsSetUpCode(trx, { site, code, now: at }))) return err({ type: "wrong-code" });
    if ((await findPerson(trx, { login })) !== undefined) return err({ type: "login-taken" });
    await trx
      .insertInto("person")
      .values({ ...blankPerson, id, site, name, roles: "administrator", created_at: at })
      .execute();
    await activate(locked, { id, login, password });
    await trx.deleteFrom("set_up_code").where("site", "=", site).execute();
    await note({ actor: `person:${id}`, action: "person.set-up", subject: id });
    return ok((await findPerson(trx, { id })) as Person);
  });
}

/** Hashes are compared by the engine's look-up, so timing tells nothing of the code. */
export async function knowsSetUpCode(
  db: Kysely<Tables>,
  { site, code, now }: { readonly site: string; readonly code: string; readonly now: string },
): Promise<boolean> {
  const row = await db
    .selectFrom("set_up_code")
    .select("site")
    .where("code_sha256", "=", sha256(code))
    .where("site", "=", site)
    .where("expires_at", ">", now)
    .executeTakeFirst();
  return row !== undefined;
}

export async function addSetUpCode(
  db: Kysely<Tables>,
  clock: () => string,
  { site, code, expiresAt }: { readonly site: string; readonly code: string; readonly expiresAt: string },
): Promise<void> {
  await db.deleteFrom("set_up_code").where("expires_at", "<=", clock()).execute();
  await db
    .insertInto("set_up_code")
    .values({ site, code_sha256: sha256(code), expires_at: expiresAt })
    .execute();
}
