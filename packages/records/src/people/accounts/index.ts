export { hashPassword, passwordCost, verifyPassword } from "../password/hash-password.ts";
export type { PasswordIssue } from "../password/judge-password.ts";
export type {
  Accounts,
  EntryIssue,
  Invitation,
  PasswordWork,
  Session,
  SignInIssue,
} from "./accounts.ts";
export { createAccounts } from "./create-accounts.ts";
export { csrfOf } from "./secrets.ts";
