import { type Kysely, sql, type Transaction } from "kysely";
import type { Role } from "../../people/principal.ts";
import type { PersonRow, Tables } from "../tables.ts";

/** A person of a site; everything that proves who it is lies elsewhere. */
export interface Person {
  readonly id: string;
  readonly site: string;
  readonly name: string;
  readonly login?: string;
  readonly roles: readonly Role[];
  readonly state: "invited" | "active" | "removed";
  readonly createdAt: string;
  readonly lastSignInAt?: string;
}

export interface ListedPerson extends Person {
  readonly passkeys: number;
}

export function personOf(row: PersonRow): Person {
  return {
    id: row.id,
    site: row.site,
    name: row.name,
    ...(row.login === null ? {} : { login: row.login }),
    roles: row.roles.split(",") as Role[],
    state: row.state,
    createdAt: row.created_at,
    ...(row.last_sign_in_at === null ? {} : { lastSignInAt: row.last_sign_in_at }),
  };
}

type Db = Kysely<Tables> | Transaction<Tables>;

export async function findPerson(
  db: Db,
  by: { readonly id: string } | { readonly login: string },
): Promise<Person | undefined> {
  const [column, value] = "id" in by ? (["id", by.id] as const) : (["login", by.login] as const);
  const row = await db.selectFrom("person").selectAll().where(column, "=", value).executeTakeFirst();
  return row === undefined ? undefined : personOf(row);
}

export async function listPeople(db: Db, site: string): Promise<readonly ListedPerson[]> {
  const rows = await db
    .selectFrom("person")
    .selectAll("person")
    .select((select) =>
      select
        .selectFrom("passkey")
        .select(sql<number>`count(*)`.as("n"))
        .whereRef("passkey.person", "=", "person.id")
        .as("passkeys"),
    )
    .where("site", "=", site)
    .orderBy("created_at")
    .orderBy("id")
    .execute();
  return rows.map((row) => ({ ...personOf(row), passkeys: Number(row.passkeys ?? 0) }));
}

/** Whether anybody ever joined the site: until then, and only then, the printed code makes the first administrator. */
export async function hasPeople(db: Db, site: string): Promise<boolean> {
  const row = await db
    .selectFrom("person")
    .select("id")
    .where("site", "=", site)
    .where("joined_at", "is not", null)
    .limit(1)
    .executeTakeFirst();
  return row !== undefined;
}

/** Whether the site would have no administrator who can act without `id`. */
export async function isLastAdministrator(db: Db, site: string, id: string): Promise<boolean> {
  const rows = await db
    .selectFrom("person")
    .select(["id", "roles"])
    .where("site", "=", site)
    .where("state", "=", "active")
    .execute();
  const administrators = rows.filter(({ roles }) => roles.split(",").includes("administrator"));
  return administrators.every((row) => row.id === id) && administrators.length > 0;
}
