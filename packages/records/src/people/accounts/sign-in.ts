import { err, ok, type Result } from "@steelyard/core/result";
import { type AttemptSubject, beginAttempt, forgiveAttempt } from "../../store/people/attempts.ts";
import { changePassword, readPassword, rehashPassword } from "../../store/people/credentials.ts";
import { endOwnSessions, listOwnSessions } from "../../store/people/own-sessions.ts";
import { findPerson, type Person } from "../../store/people/person.ts";
import { endSession, findSession, startSession } from "../../store/people/sessions.ts";
import { needsRehash } from "../password/hash-password.ts";
import { judgePassword, normalPassword } from "../password/judge-password.ts";
import type { Accounts, AccountsParts, Session, SignInIssue } from "./accounts.ts";
import { attemptDelayMs } from "./attempt-delay.ts";
import { newToken } from "./secrets.ts";

const loginForm = /^[a-z0-9._@-]{1,64}$/;

type SignIn = Pick<
  Accounts,
  | "signIn"
  | "startSession"
  | "identify"
  | "endSession"
  | "listSessions"
  | "endOtherSessions"
  | "confirmPassword"
  | "changePassword"
>;

/** How people prove who they are, and what follows from it. */
export function createSignIn(parts: AccountsParts): SignIn {
  const { store, limits, passwords, site } = parts;
  const { db, clock } = store;
  /** Checked in place of the password of a login that nobody has, so that it takes as long. */
  let nobodys: Promise<string> | undefined;

  async function check({
    login,
    password,
    address,
  }: {
    readonly login: string;
    readonly password: string;
    readonly address: string;
  }): Promise<Result<Person, SignInIssue>> {
    const subjects: AttemptSubject[] = [
      { kind: "login", name: login },
      { kind: "address", name: address },
    ];
    nobodys ??= passwords.hash(newToken(), passwords.cost);
    const stand = await nobodys;
    const until = await beginAttempt(db, clock, { subjects, delayMs: attemptDelayMs });
    if (until !== undefined) return err({ type: "locked", until });
    // What could be nobody's login is not asked for: an engine may not even take the text.
    const person = loginForm.test(login) ? await findPerson(db, { login }) : undefined;
    const stored = person?.state === "active" ? await readPassword(db, person.id) : undefined;
    const right = await passwords.verify(password, stored ?? stand);
    if (person === undefined || stored === undefined || !right) {
      const subject = person?.id ?? "unknown-login";
      const at = person?.site ?? site;
      await store.note({ site: at, actor: "anyone", action: "session.refused", subject });
      return err({ type: "wrong-credentials" });
    }
    await forgiveAttempt(db, subjects);
    if (needsRehash(stored, passwords.cost)) {
      const to = await passwords.hash(password, passwords.cost);
      await rehashPassword(db, { person: person.id, from: stored, to });
    }
    return ok(person);
  }

  const confirmPassword: Accounts["confirmPassword"] = async ({ person: id, password, address }) => {
    const person = await findPerson(db, { id });
    if (person?.login === undefined) return err({ type: "wrong-credentials" });
    return check({ login: person.login, password, address });
  };

  return {
    signIn: async (order) => {
      const checked = await check({ ...order, login: order.login.trim().toLowerCase() });
      return checked.ok ? openSession(parts, { person: checked.value, by: "password" }) : checked;
    },
    startSession: async ({ person: id, by }) => {
      const person = await findPerson(db, { id });
      if (person?.state !== "active") return undefined;
      const session = await openSession(parts, { person, by });
      return session.ok ? session.value : undefined;
    },
    identify: async (token) => {
      const found = await findSession(db, clock, { token, limits });
      return found === undefined ? undefined : { ...found, token };
    },
    endSession: async ({ person: id, token }) => {
      const person = await findPerson(db, { id });
      if (person !== undefined) await endSession(db, clock, { person, token });
    },
    listSessions: (order) => listOwnSessions(db, clock, { ...order, limits }),
    endOtherSessions: async ({ token, id, ...proof }) => {
      const confirmed = await confirmPassword(proof);
      if (!confirmed.ok) return confirmed;
      return ok(await endOwnSessions(db, clock, { person: confirmed.value, keepToken: token, id }));
    },
    confirmPassword,
    changePassword: async ({ person: id, current, next, address, token }) => {
      const confirmed = await confirmPassword({ person: id, password: current, address });
      if (!confirmed.ok) return confirmed;
      const person = confirmed.value;
      const issue = judgePassword(next, { about: [person.login ?? "", person.name, person.site] });
      if (issue !== undefined) return err(issue);
      if (normalPassword(next) === normalPassword(current)) return err({ type: "too-common" });
      const password = await passwords.hash(next, passwords.cost);
      await changePassword(db, clock, { person, password, keepToken: token });
      return ok(undefined);
    },
  };
}

/** A token that never was before, at every sign-in: whatever the browser held is worth nothing afterwards. */
export async function openSession(
  { store: { db, clock } }: AccountsParts,
  { person, by }: { readonly person: Person; readonly by: string },
): Promise<Result<Session, never>> {
  const token = newToken();
  const startedAt = await startSession(db, clock, { person, token, by });
  return ok({ person, token, startedAt });
}
