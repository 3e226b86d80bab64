import { randomBytes, scrypt, timingSafeEqual } from "node:crypto";
import { normalPassword } from "./judge-password.ts";

/** What one guess costs: memory is 128 N r bytes, time goes with N r p. */
export interface ScryptCost {
  readonly log2N: number;
  readonly r: number;
  readonly p: number;
}

/**
 * 32 MiB and about a third of a second a guess. It stands in each hash, so it can be raised: who signs in next gets the new one.
 *
 * @source owasp-password-storage, scrypt: N = 2^15, r = 8, p = 3
 * @source rfc-7914
 */
export const passwordCost: ScryptCost = { log2N: 15, r: 8, p: 3 };

const SALT_BYTES = 16;
const HASH_BYTES = 32;

/**
 * What is kept of a password: `scrypt$15$8$3$<salt>$<hash>`, base64url; another text every time. Rejects with `PasswordsBusy` where too
 * many are being hashed.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { hashPassword } from "@steelyard/records/accounts";
 *
 * assert.match(await hashPassword("violet kettle sings", { log2N: 4, r: 8, p: 1 }), /^scrypt\$4\$8\$1\$/);
 * ```
 */
export async function hashPassword(password: string, cost: ScryptCost): Promise<string> {
  const salt = randomBytes(SALT_BYTES);
  const hash = await derive(password, salt, cost);
  const { log2N, r, p } = cost;
  return ["scrypt", log2N, r, p, salt.toString("base64url"), hash.toString("base64url")].join("$");
}

/**
 * Whether a password is the one that `stored` was made of; takes as long whether it is right or wrong. Rejects with a `TypeError` where
 * `stored` is of no known kind.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { hashPassword, verifyPassword } from "@steelyard/records/accounts";
 *
 * const stored = await hashPassword("violet kettle sings", { log2N: 4, r: 8, p: 1 });
 * assert.equal(await verifyPassword("violet kettle sings", stored), true);
 * assert.equal(await verifyPassword("violet kettle", stored), false);
 * ```
 */
export async function verifyPassword(password: string, stored: string): Promise<boolean> {
  const { cost, salt, hash } = readHash(stored);
  return timingSafeEqual(await derive(password, salt, cost), hash);
}

/** Whether it was made at another cost than is asked for now. */
export function needsRehash(stored: string, { log2N, r, p }: ScryptCost): boolean {
  const { cost } = readHash(stored);
  return cost.log2N !== log2N || cost.r !== r || cost.p !== p;
}

function readHash(stored: string): {
  readonly cost: ScryptCost;
  readonly salt: Buffer;
  readonly hash: Buffer;
} {
  const [kind, log2N, r, p, salt, hash] = stored.split("$");
  if (kind !== "scrypt" || salt === undefined || hash === undefined) {
    throw new TypeError(`Cannot read a stored password as it must be of scrypt: its kind is ${kind}`);
  }
  return {
    cost: { log2N: Number(log2N), r: Number(r), p: Number(p) },
    salt: Buffer.from(salt, "base64url"),
    hash: Buffer.from(hash, "base64url"),
  };
}

/** At most so many at once: each takes memory, and a server must serve devices meanwhile. */
const AT_ONCE = 2;
/** Who comes when so many wait is sent away at once. */
const MOST_WAITING = 64;
let running = 0;
const waiting: (() => void)[] = [];

/** Too many sign in at this moment. */
class PasswordsBusy extends Error {
  readonly statusCode = 503;
}

async function derive(password: string, salt: Buffer, { log2N, r, p }: ScryptCost): Promise<Buffer> {
  if (waiting.length >= MOST_WAITING) throw new PasswordsBusy("Too many passwords are being checked");
  if (running >= AT_ONCE) await new Promise<void>((go) => waiting.push(go));
  else running += 1;
  try {
    const N = 2 ** log2N;
    return await new Promise<Buffer>((resolve, reject) => {
      const options = { N, r, p, maxmem: 2 * 128 * r * (N + p + 2) };
      scrypt(normalPassword(password), salt, HASH_BYTES, options, (error, key) =>
        error === null ? resolve(key) : reject(error),
      );
    });
  } finally {
    const next = waiting.shift();
    if (next === undefined) running -= 1;
    else next();
  }
}
