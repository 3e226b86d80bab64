import { globSync } from "node:fs";
import { dirname } from "node:path";

/** The folder with `initdb` and `postgres` of the newest PostgreSQL here, or `undefined`. Debian puts them outside the path. */
export function findPostgres(): string | undefined {
  const chosen = process.env.STEELYARD_POSTGRES_BIN;
  const places =
    chosen === undefined || chosen === ""
      ? ["/usr/lib/postgresql/*/bin/initdb", "/usr/local/bin/initdb", "/usr/bin/initdb"]
      : [`${chosen}/initdb`];
  const major = (file: string) => Number(/postgresql\/(\d+)/.exec(file)?.[1] ?? 0);
  const found = globSync(places).sort((a, b) => major(b) - major(a))[0];
  return found === undefined ? undefined : dirname(found);
}
