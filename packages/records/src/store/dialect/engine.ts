import type { Dialect, Kysely } from "kysely";

/** Why the store cannot do what it was asked, in words that a person can act on. */
export type StoreTrouble = "disk-full" | "read-only" | "disk-failed" | "busy" | "unreachable";

/** What differs between engines; everything else is one code. Each folder beside this file makes one. */
export interface Engine {
  readonly name: "sqlite" | "postgres";
  readonly dialect: Dialect;
  /** Makes the engine itself refuse to change or remove a row of `table`; with `unlessPurged`, rows of a purged case may go. */
  readonly keepAppendOnly: (
    db: Kysely<never>,
    table: string,
    rule: { readonly unlessPurged: boolean },
  ) => Promise<void>;
  /** `undefined` for an error that is a fault of this program. */
  readonly explainError: (error: unknown) => StoreTrouble | undefined;
  /** Starts the read of a whole consistent picture inside a transaction. */
  readonly holdSnapshot: (db: Kysely<never>) => Promise<void>;
}
