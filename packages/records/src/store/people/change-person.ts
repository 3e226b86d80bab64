import { err, ok, type Result } from "@steelyard/core/result";
import type { Kysely } from "kysely";
import type { Role } from "../../people/principal.ts";
import { type LockedSite, withSiteLocked } from "../site-lock.ts";
import type { Tables } from "../tables.ts";
import { putInvitation } from "./invitations.ts";
import { findPerson, isLastAdministrator, type Person } from "./person.ts";

interface Whom {
  readonly site: string;
  readonly actor: string;
  readonly id: string;
}
export type ChangeIssue = { readonly type: "unknown-person" } | { readonly type: "last-administrator" };

/** Roles and state of a person. Who is signed in is signed out: what a session may do never outlives the change. */
export function changePerson(
  db: Kysely<Tables>,
  clock: () => string,
  {
    site,
    actor,
    id,
    roles,
    state,
  }: Whom & {
    readonly roles?: readonly Role[] | undefined;
    readonly state?: "active" | "removed" | undefined;
  },
): Promise<Result<Person, ChangeIssue>> {
  return withPerson(db, clock, { site, id }, async (locked, person) => {
    const loses = state === "removed" || (roles !== undefined && !roles.includes("administrator"));
    if (loses && (await isLastAdministrator(locked.trx, site, id)))
      return err({ type: "last-administrator" });
    const next = {
      roles: (roles ?? person.roles).join(","),
      // Who never joined, or was reset, has nothing to sign in by: back from removal is invited again.
      state: state === "active" && !(await hasCredential(locked, id)) ? "invited" : (state ?? person.state),
    } as const;
    await locked.trx.updateTable("person").set(next).where("id", "=", id).execute();
    await locked.trx.deleteFrom("session").where("person", "=", id).execute();
    if (state === "removed") await locked.trx.deleteFrom("invitation").where("person", "=", id).execute();
    await locked.note({ actor, action: "person.change", subject: id, detail: next });
    return ok((await findPerson(locked.trx, { id })) as Person);
  });
}

/**
 * Takes away all that a person proves itself by and gives a new invitation. `evenLast` is for the console of the server: it is
 * the way back in where the only administrator lost access.
 */
export function resetPerson(
  db: Kysely<Tables>,
  clock: () => string,
  {
    site,
    actor,
    id,
    code,
    expiresAt,
    evenLast,
  }: Whom & { readonly code: string; readonly expiresAt: string; readonly evenLast: boolean },
): Promise<Result<Person, ChangeIssue>> {
  return withPerson(db, clock, { site, id }, async (locked, person) => {
    if (person.state === "removed") return err({ type: "unknown-person" });
    if (!evenLast && (await isLastAdministrator(locked.trx, site, id))) {
      return err({ type: "last-administrator" });
    }
    for (const table of ["session", "credential", "passkey"] as const) {
      await locked.trx.deleteFrom(table).where("person", "=", id).execute();
    }
    await locked.trx.updateTable("person").set({ state: "invited" }).where("id", "=", id).execute();
    await putInvitation(locked, { person: id, code, expiresAt });
    await locked.note({ actor, action: "person.reset", subject: id });
    return ok((await findPerson(locked.trx, { id })) as Person);
  });
}

function withPerson<T>(
  db: Kysely<Tables>,
  clock: () => string,
  { site, id }: { readonly site: string; readonly id: string },
  work: (locked: LockedSite, person: Person) => Promise<Result<T, ChangeIssue>>,
): Promise<Result<T, ChangeIssue>> {
  return withSiteLocked(db, { site, clock }, async (locked) => {
    const person = await findPerson(locked.trx, { id });
    return person?.site === site ? work(locked, person) : err({ type: "unknown-person" });
  });
}

async function hasCredential({ trx }: LockedSite, person: string): Promise<boolean> {
  const row = await trx
    .selectFrom("credential")
    .select("person")
    .where("person", "=", person)
    .executeTakeFirst();
  return row !== undefined;
}
