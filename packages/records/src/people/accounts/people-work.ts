import { randomUUID } from "node:crypto";
import { err, ok } from "@steelyard/core/result";
import { clearAttempts, lockedLogins } from "../../store/people/attempts.ts";
import { changePerson, resetPerson } from "../../store/people/change-person.ts";
import { invitePerson } from "../../store/people/invitations.ts";
import { findPerson, listPeople } from "../../store/people/person.ts";
import type { Accounts, AccountsParts } from "./accounts.ts";
import { newCode } from "./secrets.ts";

/** Long enough for somebody who is on nights. */
const INVITATION_MS = 7 * 24 * 60 * 60_000;

type PeopleWork = Pick<Accounts, "list" | "invite" | "change" | "reset" | "unlock">;

/** What administrators do, on the page or at the console. */
export function createPeopleWork({ store }: AccountsParts): PeopleWork {
  const { db, clock } = store;
  const fresh = () => ({
    code: newCode(),
    expiresAt: new Date(Date.parse(clock()) + INVITATION_MS).toISOString(),
  });
  return {
    list: async (site) => {
      const people = await listPeople(db, site);
      const logins = people.flatMap(({ login }) => (login === undefined ? [] : [login]));
      const locked = await lockedLogins(db, { logins, now: clock() });
      return people.map((person) => ({ ...person, locked: locked.has(person.login ?? "") }));
    },
    invite: async (order) => {
      const invitation = { id: randomUUID(), ...fresh() };
      await invitePerson(db, clock, { ...order, ...invitation });
      return invitation;
    },
    change: (order) => changePerson(db, clock, order),
    reset: async (order) => {
      const invitation = fresh();
      const done = await resetPerson(db, clock, { ...order, ...invitation });
      return done.ok ? ok({ id: order.id, ...invitation }) : done;
    },
    unlock: async ({ site, actor, id }) => {
      const person = await findPerson(db, { id });
      if (person?.site !== site) return err({ type: "unknown-person" });
      if (person.login !== undefined) await clearAttempts(db, { kind: "login", name: person.login });
      await store.note({ site, actor, action: "person.unlock", subject: id });
      return ok(person);
    },
  };
}
