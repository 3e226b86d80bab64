import type { Dialect, Kysely } from "kysely";

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
  /** Starts the read of a whole consistent picture inside a transaction. */
  readonly holdSnapshot: (db: Kysely<never>) => Promise<void>;
}
