import type { MachineFacts } from "./machine-facts.ts";
import type { Growth } from "./measure-growth.ts";
import type { IntakeStep } from "./measure-intake.ts";
import type { Peer } from "./measure-peers.ts";

/** Everything that one run of `bench:records` saw. */
export interface RecordsResult {
  readonly machine: MachineFacts;
  /** Of each step. */
  readonly seconds: number;
  readonly peers: {
    readonly sync: Peer;
    readonly sqliteInsert: Peer;
    readonly postgresInsert: readonly {
      readonly clients: number;
      readonly perSecond: number;
      readonly averageMs: number;
    }[];
  };
  readonly intake: {
    readonly postgres: readonly IntakeStep[];
    readonly sqlite: readonly IntakeStep[];
  };
  readonly growth: readonly Growth[];
  /** What a reader has to know of this run that is not in its figures. */
  readonly notes?: readonly string[];
}
