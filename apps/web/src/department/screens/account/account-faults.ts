import { words } from "../../messages/index.ts";

/** What is wrong with a login as typed. */
export function loginFault(text: string): string | undefined {
  return /^[a-z0-9][a-z0-9._@-]{1,63}$/.test(text) ? undefined : words.account.badLogin;
}

/** Fewest characters of a password that somebody chooses; the server decides, and says so where this page is older. */
const shortestPassword = 12;

export function passwordFault(text: string): string | undefined {
  return [...text].length >= shortestPassword ? undefined : words.account.short;
}

export function missingFault(text: string): string | undefined {
  return text.trim() === "" ? words.account.missing : undefined;
}
