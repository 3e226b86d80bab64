import type { AttemptSubject } from "../../store/people/attempts.ts";

/**
 * How long nothing is tried after the `count`th failure without a success between: five are free for a login and 30 for an
 * address (a whole department may come from one), then half a minute, doubling to a quarter of an hour, so that a
 * guesser has about a hundred guesses a day. From the 50th on a login stays shut until an administrator opens it.
 *
 * @source nist-sp-800-63b, 5.2.2 (no more than 100 failures in a row)
 */
export function attemptDelayMs(kind: AttemptSubject["kind"], count: number): number {
  const free = kind === "login" ? 5 : 30;
  if (count < free) return 0;
  if (kind === "login" && count >= SHUT_AT) return FOR_EVER_MS;
  return Math.min(FIRST_MS * 2 ** (count - free), LONGEST_MS);
}

const FIRST_MS = 30_000;
const LONGEST_MS = 15 * 60_000;
const SHUT_AT = 50;
const FOR_EVER_MS = 100 * 365 * 24 * 60 * 60_000;
