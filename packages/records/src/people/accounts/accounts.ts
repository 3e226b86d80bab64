import type { Result } from "@steelyard/core/result";
import type { ChangeIssue } from "../../store/people/change-person.ts";
import type { JoinIssue } from "../../store/people/invitations.ts";
import type { ListedPerson, Person } from "../../store/people/person.ts";
import type { SessionLimits } from "../../store/people/sessions.ts";
import type { Store } from "../../store/store.ts";
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

/** A session that begins: the token goes to the browser and is kept nowhere else. */
export interface NewSession {
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
  }) => Promise<Result<NewSession, EntryIssue | { readonly type: "set-up-already" }>>;
  readonly join: (order: {
    readonly code: string;
    readonly login: string;
    readonly password: string;
    readonly address: string;
  }) => Promise<Result<NewSession, EntryIssue>>;
  readonly signIn: (order: {
    readonly login: string;
    readonly password: string;
    readonly address: string;
  }) => Promise<Result<NewSession, SignInIssue>>;
  /** After another proof than a password, which the caller has checked. */
  readonly startSession: (order: {
    readonly person: string;
    readonly by: string;
  }) => Promise<NewSession | undefined>;
  /** Who a session belongs to now. */
  readonly identify: (token: string) => Promise<Person | undefined>;
  readonly endSession: (order: { readonly person: string; readonly token: string }) => Promise<void>;
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
