import { randomUUID } from "node:crypto";
import { err, type Result } from "@steelyard/core/result";
import { type AttemptSubject, beginAttempt, forgiveAttempt } from "../../store/people/attempts.ts";
import {
  addSetUpCode,
  findInvited,
  joinPerson,
  knowsSetUpCode,
  setUpPeople,
} from "../../store/people/invitations.ts";
import { hasPeople } from "../../store/people/person.ts";
import { judgePassword } from "../password/judge-password.ts";
import type { Accounts, AccountsParts, EntryIssue, Session } from "./accounts.ts";
import { attemptDelayMs } from "./attempt-delay.ts";
import { newCode, normalCode } from "./secrets.ts";
import { openSession } from "./sign-in.ts";

/** A code that nobody used is of no use a day later; another start of the server prints another. */
const SET_UP_MS = 24 * 60 * 60_000;

type Entrances = Pick<Accounts, "isSetUp" | "newSetUpCode" | "setUp" | "join">;

/** How the first administrator and the invited come in, by a code and once. */
export function createEntrances(parts: AccountsParts): Entrances {
  const { store, site, passwords } = parts;
  const { db, clock } = store;

  /** Guesses of codes are counted by address; what is wrong with the password says nothing to who has no code. */
  async function withCode<I>(
    address: string,
    codeHolds: () => Promise<boolean>,
    work: () => Promise<Result<Session, I | EntryIssue>>,
  ): Promise<Result<Session, I | EntryIssue>> {
    const subjects: AttemptSubject[] = [{ kind: "address", name: address }];
    const until = await beginAttempt(db, clock, { subjects, delayMs: attemptDelayMs });
    if (until !== undefined) return err({ type: "locked", until });
    if (!(await codeHolds())) return err({ type: "wrong-code" });
    await forgiveAttempt(db, subjects);
    return work();
  }

  return {
    isSetUp: () => hasPeople(db, site),
    newSetUpCode: async () => {
      if (await hasPeople(db, site)) return undefined;
      const code = newCode();
      const expiresAt = new Date(Date.parse(clock()) + SET_UP_MS).toISOString();
      await addSetUpCode(db, clock, { site, code, expiresAt });
      return code;
    },
    setUp: async ({ code: typed, name, login, password, address }) => {
      if (await hasPeople(db, site)) return err({ type: "set-up-already" });
      const code = normalCode(typed);
      return withCode(
        address,
        () => knowsSetUpCode(db, { site, code, now: clock() }),
        async () => {
          const issue = judgePassword(password, { about: [login, name, site] });
          if (issue !== undefined) return err(issue);
          const hash = await passwords.hash(password, passwords.cost);
          const order = { site, id: randomUUID(), name, code, login, password: hash };
          const done = await setUpPeople(db, clock, order);
          return done.ok ? openSession(parts, { person: done.value, by: "set-up" }) : done;
        },
      );
    },
    join: async ({ code: typed, login, password, address }) => {
      const code = normalCode(typed);
      const invited = () => findInvited(db, { code, now: clock() });
      return withCode(
        address,
        async () => (await invited()) !== undefined,
        async () => {
          const person = await invited();
          if (person === undefined) return err({ type: "wrong-code" });
          const issue = judgePassword(password, { about: [login, person.name, person.site] });
          if (issue !== undefined) return err(issue);
          const hash = await passwords.hash(password, passwords.cost);
          const done = await joinPerson(db, clock, { site: person.site, code, login, password: hash });
          return done.ok ? openSession(parts, { person: done.value, by: "invitation" }) : done;
        },
      );
    },
  };
}
