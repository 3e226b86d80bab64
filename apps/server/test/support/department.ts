import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import {
  type Accounts,
  createAccounts,
  csrfOf,
  hashPassword,
  verifyPassword,
} from "@steelyard/records/accounts";
import type { PersonRole } from "@steelyard/records/department";
import { readSettings } from "@steelyard/records/settings";
import { type DatabaseSettings, openStore, type Store } from "@steelyard/records/store";
import type { FastifyInstance, FastifyServerOptions, LightMyRequestResponse } from "fastify";
import { createServer } from "../../src/index.ts";
import { createMetrics } from "../../src/metrics.ts";

export const goodPassword = "violet kettle sings at noon";
/** Real scrypt, at a cost that a test has time for. */
const cost = { log2N: 4, r: 8, p: 1 };

/** A browser with the session of one person, or without any. */
export interface Visitor {
  readonly id: string;
  readonly login: string;
  readonly token: string;
  readonly csrf: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly get: (url: string) => Promise<LightMyRequestResponse>;
  readonly post: (
    url: string,
    body: unknown,
    headers?: Readonly<Record<string, string>>,
  ) => Promise<LightMyRequestResponse>;
}

export interface Department {
  readonly server: FastifyInstance;
  readonly store: Store;
  readonly accounts: Accounts;
  readonly deviceToken: string;
  /** Time goes on by so much for everything that asks the clock of the store. */
  readonly wait: (ms: number) => void;
  /** Somebody new with these roles, invited, joined and signed in. */
  readonly person: (...roles: PersonRole[]) => Promise<Visitor>;
  readonly anyone: Visitor;
  /** How often a password was hashed or compared. */
  readonly hashes: () => number;
  readonly close: () => Promise<void>;
}

/** A whole server of one department in this process, on a real database; nothing of it is stood in for. */
export async function startDepartment({
  database = { type: "sqlite", file: ":memory:" },
  env = {},
  logger,
}: {
  readonly database?: DatabaseSettings;
  readonly env?: Readonly<Record<string, string>>;
  readonly logger?: FastifyServerOptions["logger"];
} = {}): Promise<Department> {
  const settings = readSettings({ text: "", env });
  if (!settings.ok) throw new RangeError(`The settings of the test: ${JSON.stringify(settings.error)}`);
  const { site, sessions } = settings.value;
  let ms = Date.UTC(2026, 10, 25, 4);
  const store = await openStore({
    database,
    clock: () => new Date(ms++).toISOString(),
    newId: randomUUID,
  });
  await store.addSite(site);
  let hashes = 0;
  const accounts = createAccounts({
    store,
    site,
    limits: { idleMs: sessions.idleMinutes * 60_000, absoluteMs: sessions.absoluteHours * 3_600_000 },
    passwords: {
      cost,
      hash: (password, at) => hashPassword(password, at),
      verify: (password, stored) => {
        hashes += 1;
        return verifyPassword(password, stored);
      },
    },
  });
  const deviceToken = "d".repeat(43);
  await store.enrolDevice({ site, actor: "console", id: randomUUID(), name: "Resus 1", token: deviceToken });
  const pageDir = mkdtempSync(join(tmpdir(), "steelyard-department-"));
  writeFileSync(join(pageDir, "index.html"), "<!doctype html><title>t</title>");
  const server = await createServer({
    pageDir,
    records: { store, settings: settings.value, metrics: createMetrics(), isStopping: () => false, accounts },
    ...(logger === undefined ? {} : { logger }),
  });
  let count = 0;
  return {
    server,
    store,
    accounts,
    deviceToken,
    wait: (by) => {
      ms += by;
    },
    anyone: visitor(server, { id: "", login: "" }),
    person: async (...roles) => {
      const login = `visitor-${++count}`;
      const order = { site, actor: "console", name: `Visitor ${count}`, roles };
      const { code } = await accounts.invite(order);
      const joined = await accounts.join({ code, login, password: goodPassword, address: "127.0.0.1" });
      if (!joined.ok) throw new RangeError(`The test's visitor could not join: ${joined.error.type}`);
      const { token, person } = joined.value;
      return visitor(server, { id: person.id, login, token });
    },
    hashes: () => hashes,
    close: async () => {
      await server.close();
      await store.close();
      rmSync(pageDir, { recursive: true });
    },
  };
}

/** What a browser sends by itself, and what the page adds. */
export function visitor(
  server: FastifyInstance,
  { id, login, token }: { readonly id: string; readonly login: string; readonly token?: string },
): Visitor {
  const csrf = token === undefined ? "" : csrfOf(token);
  const headers = {
    ...(token === undefined ? {} : { cookie: `steelyard-session=${token}; __Host-steelyard=${token}` }),
  };
  return {
    id,
    login,
    token: token ?? "",
    csrf,
    headers,
    get: (url) => server.inject({ url, headers }),
    post: (url, body, more = {}) =>
      server.inject({
        method: "POST",
        url,
        headers: {
          "content-type": "application/json",
          ...headers,
          ...(csrf === "" ? {} : { "x-steelyard-csrf": csrf }),
          ...more,
        },
        payload: typeof body === "string" ? body : JSON.stringify(body),
      }),
  };
}
