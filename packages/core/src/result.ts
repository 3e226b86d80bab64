/**
 * The outcome of a calculation that may fail for a reason a clinician or a file can plausibly cause.
 *
 * Misuse by a programmer throws; a clinical failure is a value, so that no caller can forget it.
 */
export type Result<T, E> = Ok<T> | Err<E>;

export interface Ok<T> {
  readonly ok: true;
  readonly value: T;
}

export interface Err<E> {
  readonly ok: false;
  readonly error: E;
}

/**
 * A calculation that succeeded, with its value.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { ok } from "@steelyard/core/result";
 *
 * const weighed = ok(28.1);
 * assert.equal(weighed.ok && weighed.value, 28.1);
 * ```
 */
export function ok<T>(value: T): Ok<T> {
  return { ok: true, value };
}

/**
 * A calculation that failed, with the reason.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { err } from "@steelyard/core/result";
 *
 * const refused = err({ type: "length-missing" });
 * assert.equal(refused.ok, false);
 * ```
 */
export function err<E>(error: E): Err<E> {
  return { ok: false, error };
}
