import type { Kysely } from "kysely";
import { sha256 } from "../audit-hash.ts";
import type { FailedAttemptRow, Tables } from "../tables.ts";

/** What is counted: tries for one login, tries from one address. */
export interface AttemptSubject {
  readonly kind: "login" | "address";
  readonly name: string;
}

/** Gives the time until which no more is tried after the `count`th failure, or none. */
export type AttemptDelay = (subject: AttemptSubject["kind"], count: number) => number;

/** Failures older than this are forgotten. */
const FORGET_MS = 24 * 60 * 60 * 1000;

/**
 * Counts a try as failed before it is judged, so that a hundred at once are a hundred; gives the time until which to wait
 * where the subjects had too many already.
 */
export async function beginAttempt(
  db: Kysely<Tables>,
  clock: () => string,
  { subjects, delayMs }: { readonly subjects: readonly AttemptSubject[]; readonly delayMs: AttemptDelay },
): Promise<string | undefined> {
  const now = clock();
  const nowMs = Date.parse(now);
  const old = new Date(nowMs - FORGET_MS).toISOString();
  return db.transaction().execute(async (trx) => {
    await trx.deleteFrom("failed_attempt").where("last_at", "<", old).where("until", "<", now).execute();
    const blank = { count: 0, last_at: now, until: "" };
    const rows: FailedAttemptRow[] = [];
    // In one order everywhere, so that two servers do not wait for each other.
    for (const subject of [...subjects].sort((a, b) => (keyOf(a) < keyOf(b) ? -1 : 1))) {
      const row = await trx
        .insertInto("failed_attempt")
        .values({ ...blank, subject: keyOf(subject) })
        .onConflict((conflict) => conflict.column("subject").doUpdateSet({ last_at: now }))
        .returningAll()
        .executeTakeFirstOrThrow();
      rows.push(row);
    }
    const latest =
      rows
        .map(({ until }) => until)
        .sort()
        .at(-1) ?? "";
    if (latest > now) return latest;
    for (const row of rows) {
      const count = row.count + 1;
      const kind = row.subject.startsWith("login:") ? "login" : "address";
      const wait = delayMs(kind, count);
      const until = wait === 0 ? "" : new Date(nowMs + wait).toISOString();
      await trx
        .updateTable("failed_attempt")
        .set({ count, until })
        .where("subject", "=", row.subject)
        .execute();
    }
    return undefined;
  });
}

/** The try was good: the login begins anew, the address only gets this one back. */
export async function forgiveAttempt(db: Kysely<Tables>, subjects: readonly AttemptSubject[]): Promise<void> {
  for (const subject of subjects) {
    if (subject.kind === "login") await clearAttempts(db, subject);
    else {
      await db
        .updateTable("failed_attempt")
        .set(({ eb }) => ({ count: eb("count", "-", 1), until: "" }))
        .where("subject", "=", keyOf(subject))
        .where("count", ">", 0)
        .execute();
    }
  }
}

export async function clearAttempts(db: Kysely<Tables>, subject: AttemptSubject): Promise<void> {
  await db.deleteFrom("failed_attempt").where("subject", "=", keyOf(subject)).execute();
}

/** Which of the logins must wait at the moment. */
export async function lockedLogins(
  db: Kysely<Tables>,
  { logins, now }: { readonly logins: readonly string[]; readonly now: string },
): Promise<ReadonlySet<string>> {
  if (logins.length === 0) return new Set();
  const byKey = new Map(logins.map((name) => [keyOf({ kind: "login", name }), name]));
  const rows = await db
    .selectFrom("failed_attempt")
    .select("subject")
    .where("subject", "in", [...byKey.keys()])
    .where("until", ">", now)
    .execute();
  return new Set(rows.map(({ subject }) => byKey.get(subject) ?? ""));
}

function keyOf({ kind, name }: AttemptSubject): string {
  return `${kind}:${sha256(name)}`;
}
