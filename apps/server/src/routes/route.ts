import type { Accounts, Session } from "@steelyard/records/accounts";
import type { Principal, Role } from "@steelyard/records/people";
import type { Settings } from "@steelyard/records/settings";
import type { Store } from "@steelyard/records/store";
import type { GenericSchema } from "valibot";
import type { Metrics } from "../metrics.ts";

/** What a server is made with. */
export interface RecordsService {
  readonly store: Store;
  readonly settings: Settings;
  readonly metrics: Metrics;
  readonly isStopping: () => boolean;
  /** Made of store and settings where absent. */
  readonly accounts?: Accounts;
}

/** What every route is given. */
export interface RouteService extends RecordsService {
  readonly accounts: Accounts;
}

export interface RouteRequest {
  readonly principal: Principal;
  /** Of the person that the principal is; no other principal has one. */
  readonly session?: Session | undefined;
  /** As the schemas of the route gave them. */
  readonly body: unknown;
  readonly query: unknown;
  /** Of the client, by the proxy where one is trusted. */
  readonly ip: string;
  /** Of the page, as its visitors see it. */
  readonly origin: string;
}

export interface RouteReply {
  readonly status: number;
  readonly body: unknown;
  readonly headers?: Readonly<Record<string, string>>;
}

/** Whoever is signed in, whatever the role. */
export const everyPerson: readonly Role[] = ["clinician", "reviewer", "researcher", "administrator"];

/** One way into the server. There is no other: the table of routes is all of them, and a test walks it for every role. */
export interface Route {
  readonly method: "GET" | "POST";
  readonly url: `/${string}`;
  /** Who may use it; `anyone` needs no token. */
  readonly roles: "anyone" | readonly Role[];
  /** Requests of one address or principal a minute, where fewer than elsewhere: it costs much, or invites guessing. */
  readonly perMinute?: number;
  /** Largest body, where it is more than elsewhere. */
  readonly bodyBytes?: number;
  /** Absent: a body is not looked at. */
  readonly body?: GenericSchema<unknown, unknown>;
  readonly query?: GenericSchema<unknown, unknown>;
  /** By status. What does not fit is not sent: no field leaves by accident. Texts are sent as plain text. */
  readonly replies: Readonly<Record<number, GenericSchema<unknown, unknown>>>;
  readonly handle: (request: RouteRequest, service: RouteService) => Promise<RouteReply>;
}
