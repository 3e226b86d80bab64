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

export function ok<T>(value: T): Ok<T> {
  return { ok: true, value };
}

export function err<E>(error: E): Err<E> {
  return { ok: false, error };
}
