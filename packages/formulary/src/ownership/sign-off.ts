import type { Formulary, Reviewer, SignOff } from "@steelyard/core/dosing";
import { err, ok, type Result } from "@steelyard/core/result";
import { canonicalJson } from "./canonical-json.ts";

/** SHA-256 of the UTF-8 bytes of a text, as 64 hexadecimal digits in lower case. */
export type Sha256 = (text: string) => string | Promise<string>;

/** Why a formulary does not count as signed. */
export type SignOffIssue =
  | { readonly type: "not-signed" }
  /** Something was edited after it was signed. */
  | { readonly type: "changed-since"; readonly signOff: SignOff; readonly fingerprint: string };

/**
 * The formulary with the name, role and day of whoever answers for it, and the fingerprint of all of it.
 *
 * fingerprint = SHA-256 over the canonical text of the formulary with the sign-off, without the fingerprint itself.
 * It shows that nothing was edited since; it does not prove who signed: keep the fingerprint where the file is not.
 * `second` is whoever reviewed it independently as well: four eyes. `date` as 2026-11-25. Throws a `TypeError` where name or role is empty, a `RangeError` where date is no day.
 *
 * ```ts
 * import { createHash } from "node:crypto";
 * import { draftFormulary } from "@steelyard/formulary";
 * import { signFormulary, verifySignOff } from "@steelyard/formulary/ownership";
 * import assert from "node:assert/strict";
 * const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");
 * const by = { name: "A. Example", role: "pharmacist", date: "2026-11-25" };
 * const signed = await signFormulary({ formulary: draftFormulary, ...by, sha256 });
 * assert.ok((await verifySignOff({ formulary: signed, sha256 })).ok);
 * assert.ok(!(await verifySignOff({ formulary: { ...signed, version: "2" }, sha256 })).ok);
 * ```
 */
export async function signFormulary({
  formulary,
  name,
  role,
  date,
  second,
  sha256,
}: Reviewer & {
  readonly formulary: Formulary;
  readonly second?: Reviewer;
  readonly sha256: Sha256;
}): Promise<Formulary> {
  const { signOff: _, ...unsigned } = formulary;
  const by = {
    ...checkedReviewer({ name, role, date }),
    ...(second && { second: checkedReviewer(second) }),
  };
  const signed = { ...unsigned, signed: true };
  const fingerprint = await fingerprintOf({ ...signed, signOff: by }, sha256);
  return { ...signed, signOff: { ...by, fingerprint } };
}

function checkedReviewer({ name, role, date }: Reviewer): Reviewer {
  if (name.trim() === "" || role.trim() === "") {
    throw new TypeError("Cannot sign a formulary as name and role must not be empty");
  }
  if (!isDay(date)) {
    throw new RangeError(
      `Cannot sign a formulary as date must be a day such as 2026-11-25: current value is ${date}`,
    );
  }
  return { name: name.trim(), role: role.trim(), date };
}

/**
 * Who signed a formulary, or why it does not count as signed: never was, or was edited since.
 *
 * ```ts
 * import { draftFormulary } from "@steelyard/formulary";
 * import { verifySignOff } from "@steelyard/formulary/ownership";
 * import assert from "node:assert/strict";
 * const result = await verifySignOff({ formulary: draftFormulary, sha256: () => "" });
 * assert.deepEqual(result, { ok: false, error: { type: "not-signed" } });
 * ```
 */
export async function verifySignOff({
  formulary,
  sha256,
}: {
  readonly formulary: Formulary;
  readonly sha256: Sha256;
}): Promise<Result<SignOff, SignOffIssue>> {
  const { signOff } = formulary;
  if (!formulary.signed || signOff === undefined) return err({ type: "not-signed" });
  const { fingerprint: stated, ...by } = signOff;
  const fingerprint = await fingerprintOf({ ...formulary, signOff: by }, sha256);
  return fingerprint === stated ? ok(signOff) : err({ type: "changed-since", signOff, fingerprint });
}

/**
 * The formulary as it is after any edit: nobody answers for it.
 *
 * ```ts
 * import { draftFormulary } from "@steelyard/formulary";
 * import { withoutSignOff } from "@steelyard/formulary/ownership";
 * import assert from "node:assert/strict";
 * assert.equal(withoutSignOff({ ...draftFormulary, signed: true }).signed, false);
 * ```
 */
export function withoutSignOff({ signOff: _, ...formulary }: Formulary): Formulary {
  return { ...formulary, signed: false };
}

async function fingerprintOf(content: unknown, sha256: Sha256): Promise<string> {
  return sha256(canonicalJson(content));
}

function isDay(date: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (match === null) return false;
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
  return day >= 1 && day <= days;
}
