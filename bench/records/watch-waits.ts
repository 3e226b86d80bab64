import { spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import { findPostgres } from "../../scripts/find-postgres.ts";

/** How often each thing was waited for, of all looks at sessions that were at work; `none` is computing. */
export type Waits = Readonly<Record<string, number>>;

const QUERY = `SELECT coalesce(wait_event_type || ':' || wait_event, 'none') FROM pg_stat_activity
  WHERE backend_type = 'client backend' AND pid <> pg_backend_pid() AND state <> 'idle'`;

/** Looks at `pg_stat_activity` 20 times a second until `stop` is called. */
export function watchWaits(url: string): { readonly stop: () => Promise<Waits> } {
  const child = spawn(join(findPostgres() ?? "", "psql"), ["-q", "-A", "-t", url], {
    stdio: ["pipe", "pipe", "ignore"],
  });
  let text = "";
  child.stdout.on("data", (chunk) => {
    text += chunk;
  });
  child.stdin.write(`${QUERY}\n\\watch 0.05\n`);
  return {
    stop: async () => {
      const ended = once(child, "exit");
      child.kill("SIGINT");
      child.stdin.end();
      await ended;
      const seen = text.split("\n").filter((line) => line === "none" || /^\w+:\w+$/.test(line));
      const counts: Record<string, number> = {};
      for (const wait of seen) counts[wait] = (counts[wait] ?? 0) + 1;
      const shares = Object.entries(counts).map(([wait, n]) => [wait, Number((n / seen.length).toFixed(2))]);
      return Object.fromEntries(shares.sort((a, b) => Number(b[1]) - Number(a[1])).slice(0, 5));
    },
  };
}
