import type { Waits } from "./watch-waits.ts";

export type Bottleneck =
  /** Sessions queue for the row of a site, which one holds until its commit is on the disk. */
  | "row of the site"
  /** All processors of the machine were busy. */
  | "processors"
  /** One server process: JavaScript runs on one processor. */
  | "server process"
  /** Waiting for the disk at commit. */
  | "commit to the disk"
  /** Nothing was busy: the next request came only after the answer. */
  | "one after the other";

export interface Evidence {
  readonly engine: "sqlite" | "postgres";
  readonly processors: number;
  readonly connections: number;
  /** Of one processor, by process, and of all of them under `machine`. */
  readonly processorShares: Readonly<Record<string, number>>;
  readonly waits: Waits;
}

/** What held an intake up, by what was seen while it ran. */
export function nameBottleneck(evidence: Evidence): Bottleneck {
  const { engine, processors, connections, processorShares, waits } = evidence;
  const servers = Object.entries(processorShares).filter(([name]) => name.startsWith("server"));
  const busiest = Math.max(...servers.map(([, share]) => share));
  const waited = (pattern: RegExp) =>
    Object.entries(waits).reduce((sum, [wait, share]) => sum + (pattern.test(wait) ? share : 0), 0);
  if (waited(/^Lock:/) > 0.4) return "row of the site";
  if ((processorShares.machine ?? 0) > 0.85 * processors) return "processors";
  // On SQLite the one server computes or waits in the commit, and nothing else: the greater part names it.
  if (busiest > (engine === "sqlite" && connections > 1 ? 0.5 : 0.85)) return "server process";
  if (connections === 1) return "one after the other";
  if (waited(/^(IO:WAL|LWLock:WAL)/) > 0.3) return "commit to the disk";
  return engine === "sqlite" ? "commit to the disk" : "one after the other";
}
