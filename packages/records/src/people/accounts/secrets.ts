import { createHmac, randomBytes } from "node:crypto";

/** 256 bits of chance. Secrets come from the operating system and not from the caller: a test must not be able to weaken them. */
export function newToken(): string {
  return randomBytes(32).toString("base64url");
}

/** Signs that cannot be taken for one another when somebody reads them out: no 0 O 1 I L U. */
const CODE_SIGNS = 30;
const SIGNS = "23456789ABCDEFGHJKMNPQRSTVWXYZ";

/**
 * 30 signs of 30, about 147 bits, in groups of five, to be read from a screen or a console and typed: so many bits that a plain
 * hash of it can be kept.
 *
 * @source owasp-asvs-5, 6.5.2 (112 bits) and 11.5.1 (128 bits)
 */
export function newCode(): string {
  const signs: string[] = [];
  while (signs.length < CODE_SIGNS) {
    for (const byte of randomBytes(32)) {
      // What lies past the last whole multiple is thrown away, so that every sign is as likely.
      if (byte < 240 && signs.length < CODE_SIGNS) signs.push(SIGNS.charAt(byte % SIGNS.length));
    }
  }
  return (signs.join("").match(/.{5}/g) ?? []).join("-");
}

/** As it was printed, however it was typed. */
export function normalCode(text: string): string {
  return text
    .toUpperCase()
    .replace(/[^A-Z0-9]/g, "")
    .replace(/(.{5})(?=.)/g, "$1-");
}

/**
 * The token against forged requests that belongs to one session and to no other; from it nobody can tell the session's own.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { csrfOf } from "@steelyard/records/accounts";
 *
 * assert.equal(csrfOf("a").length, 43);
 * assert.notEqual(csrfOf("a"), csrfOf("b"));
 * ```
 */
export function csrfOf(token: string): string {
  return createHmac("sha256", token).update("steelyard csrf").digest("base64url");
}
