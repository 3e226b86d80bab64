import { hashPassword, passwordCost, verifyPassword } from "../password/hash-password.ts";
import type { Accounts, AccountsOptions } from "./accounts.ts";
import { createEntrances } from "./entrances.ts";
import { createPasskeyRecords } from "./passkey-records.ts";
import { createPeopleWork } from "./people-work.ts";
import { createSignIn } from "./sign-in.ts";

/**
 * Binds people's ways in to a store.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { createAccounts } from "@steelyard/records/accounts";
 * import { openStore } from "@steelyard/records/store";
 *
 * const newId = () => "00000000-0000-4000-8000-000000000001";
 * const options = { database: { type: "sqlite", file: ":memory:" }, clock: () => "2026-11-25T03:12:00.000Z", newId } as const;
 * const store = await openStore(options);
 * await store.addSite("resus");
 * const limits = { idleMs: 1_800_000, absoluteMs: 43_200_000 };
 * const accounts = createAccounts({ store, site: "resus", limits });
 * assert.equal(await accounts.isSetUp(), false);
 * assert.match((await accounts.newSetUpCode()) ?? "", /^[2-9A-Z]{5}(-[2-9A-Z]{5}){5}$/);
 * await store.close();
 * ```
 */
export function createAccounts(options: AccountsOptions): Accounts {
  const passwords = { cost: passwordCost, hash: hashPassword, verify: verifyPassword };
  const parts = { passwords, ...options };
  return {
    limits: options.limits,
    ...createEntrances(parts),
    ...createSignIn(parts),
    ...createPeopleWork(parts),
    passkeys: createPasskeyRecords(parts),
  };
}
