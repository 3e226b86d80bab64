import { type OptionsType, ZxcvbnFactory } from "@zxcvbn-ts/core";
import { adjacencyGraphs, dictionary } from "@zxcvbn-ts/language-common";

/**
 * Bounds of a password, in characters. Long enough to be no single word, and long enough for a sentence; no rule of what it is made of.
 *
 * @source owasp-asvs-5, 6.2.1 (at least 8, better 15), 6.2.9 (64 must be allowed), 6.2.5 (no rules of composition)
 */
const passwordLength = { min: 12, max: 128 } as const;

/** Of 0 to 4 as the library counts: 3 is more than 10^8 guesses. */
const LEAST_SCORE = 3;

export type PasswordIssue =
  | { readonly type: "too-short"; readonly min: number }
  | { readonly type: "too-long"; readonly max: number }
  /** Login, name or another word that everybody knows of this person is in it. */
  | { readonly type: "names-you" }
  /** One of the first that somebody would try. */
  | { readonly type: "too-common" };

let judge: ZxcvbnFactory | undefined;

/** One form of each sign, so that the same keys are the same password on every keyboard. */
export function normalPassword(password: string): string {
  return password.normalize("NFC");
}

/** What is wrong with a password that somebody chooses; nothing where it is good. `about` is what others know: login, name, site. */
export function judgePassword(
  password: string,
  { about }: { readonly about: readonly string[] },
): PasswordIssue | undefined {
  const normal = normalPassword(password);
  const length = [...normal].length;
  if (length < passwordLength.min) return { type: "too-short", min: passwordLength.min };
  if (length > passwordLength.max) return { type: "too-long", max: passwordLength.max };
  const small = normal.toLowerCase();
  const known = about.flatMap((text) => [text, ...text.split(/[\s._@-]+/)]).map((word) => word.toLowerCase());
  if (known.some((word) => word.length >= 4 && small.includes(word))) return { type: "names-you" };
  judge ??= new ZxcvbnFactory({ dictionary, graphs: adjacencyGraphs } as OptionsType);
  const { score } = judge.check(normal, [...known, "steelyard", "bedside", "casebook", "hospital"]);
  return score < LEAST_SCORE ? { type: "too-common" } : undefined;
}
