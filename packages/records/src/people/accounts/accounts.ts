import type { Result } from "@steelyard/core/result";
import type { ChangeIssue } from "../../store/people/change-person.ts";
import type { JoinIssue } from "../../store/people/invitations.ts";
import type { OwnSession } from "../../store/people/own-sessions.ts";
import type { addPasskey, Challenge, NewPasskey } from "../../store/people/passkeys.ts";
import type { ListedPerson, Person } from "../../store/people/person.ts";
import type { SessionLimits } from "../../store/people/sessions.ts";
import type { Store } from "../../store/store.ts";
import type { PasskeyRow } from "../../store/tables.ts";
import type { ScryptCost } from "../password/hash-password.ts";
import type { PasswordIssue } from "../password/judge-password.ts";
import type { Role } from "../principal.ts";

/** How passwords are hashed and checked; another cost where a test has no time. */
export interface PasswordWork {
  readonly cost: ScryptCost;
  readonly hash: (password: string, cost: ScryptCost) => Promise<string>;
  readonly verify: (password: string, stored: string) => Promise<boolean>;
}

export interface AccountsOptions {
  readonly store: Store;
  /** Where the first administrator belongs to. */
  readonly site: string;
  readonly limits: SessionLimits;
  readonly passwords?: PasswordWork;
}
export type AccountsParts = Required<AccountsOptions>;

/** The token is in the browser and kept nowhere else. */
export interface Session {
  readonly startedAt: string;
  readonly person: Person;
  readonly token: string;
}
export type SignInIssue =
  /** Nothing says whether the login is known. */
  { readonly type: "wrong-credentials" } | { readonly type: "locked"; readonly until: string };
export type EntryIssue = JoinIssue | { readonly type: "locked"; readonly until: string } | PasswordIssue;

/** Everything that people do to come in, stay in and be let in; one for each server. */
export interface Accounts {
  readonly limits: SessionLimits;
  /** Whether anybody ever joined the site. */
  readonly isSetUp: () => Promise<boolean>;
  /** A code for the first administrator, to be printed; none where somebody is there. */
  readonly newSetUpCode: () => Promise<string | undefined>;
  readonly setUp: (order: {
    readonly code: string;
    readonly name: string;
    readonly login: string;
    readonly password: string;
    readonly address: string;
  }) => Promise<Result<Session, EntryIssue | { readonly type: "set-up-already" }>>;
  readonly join: (order: {
    readonly code: string;
    readonly login: string;
    readonly password: string;
    readonly address: string;
  }) => Promise<Result<Session, EntryIssue>>;
  readonly signIn: (order: {
    readonly login: string;
    readonly password: string;
    readonly address: string;
  }) => Promise<Result<Session, SignInIssue>>;
  /** After another proof than a password, which the caller has checked. */
  readonly startSession: (order: {
    readonly person: string;
    readonly by: string;
  }) => Promise<Session | undefined>;
  /** Who a session belongs to now. */
  readonly identify: (token: string) => Promise<Session | undefined>;
  readonly endSession: (order: { readonly person: string; readonly token: string }) => Promise<void>;
  /** The sessions of a person that still hold; `token` is the one that asks. */
  readonly listSessions: (order: {
    readonly person: string;
    readonly token: string;
  }) => Promise<readonly OwnSession[]>;
  /** Ends another session of the person, or without an `id` all others; how many there were. */
  readonly endOtherSessions: (order: {
    readonly person: string;
    readonly password: string;
    readonly address: string;
    readonly token: string;
    readonly id?: string | undefined;
  }) => Promise<Result<number, SignInIssue>>;
  /** The password once more, before something that counts, such as a signature; wrong ones count as failed sign-ins. */
  readonly confirmPassword: (order: {
    readonly person: string;
    readonly password: string;
    readonly address: string;
  }) => Promise<Result<Person, SignInIssue>>;
  readonly changePassword: (order: {
    readonly person: string;
    readonly current: string;
    readonly next: string;
    readonly address: string;
    readonly token: string;
  }) => Promise<Result<void, SignInIssue | PasswordIssue>>;
  readonly list: (site: string) => Promise<readonly (ListedPerson & { readonly locked: boolean })[]>;
  readonly invite: (order: {
    readonly site: string;
    readonly actor: string;
    readonly name: string;
    readonly roles: readonly Role[];
  }) => Promise<Invitation>;
  readonly change: (
    order: ByWhom & {
      readonly roles?: readonly Role[] | undefined;
      readonly state?: "active" | "removed" | undefined;
    },
  ) => Promise<Result<Person, ChangeIssue>>;
  readonly reset: (
    order: ByWhom & { readonly evenLast: boolean },
  ) => Promise<Result<Invitation, ChangeIssue>>;
  readonly unlock: (order: ByWhom) => Promise<Result<Person, ChangeIssue>>;
  readonly passkeys: PasskeyRecords;
}

/** What is kept of passkeys; whether a response is good is told by whoever knows WebAuthn. */
export interface PasskeyRecords {
  readonly list: (person: string) => Promise<readonly PasskeyRow[]>;
  readonly find: (credentialId: string) => Promise<PasskeyRow | undefined>;
  readonly add: (order: {
    readonly person: Person;
    readonly passkey: NewPasskey;
  }) => ReturnType<typeof addPasskey>;
  readonly use: (order: {
    readonly id: string;
    readonly from: number;
    readonly to: number;
  }) => Promise<boolean>;
  /** Every session of the person but the one of `keepToken` ends with it. */
  readonly remove: (order: {
    readonly person: Person;
    readonly id: string;
    readonly keepToken: string;
  }) => Promise<boolean>;
  readonly addChallenge: (challenge: Challenge) => Promise<void>;
  readonly takeChallenge: (
    by: { readonly id: string } | { readonly person: string },
  ) => Promise<readonly string[]>;
}

interface ByWhom {
  readonly site: string;
  readonly actor: string;
  readonly id: string;
}
export interface Invitation {
  readonly id: string;
  readonly code: string;
  readonly expiresAt: string;
}
