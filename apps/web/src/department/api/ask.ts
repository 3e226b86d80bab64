import { err, ok, type Result } from "@steelyard/core/result";
import { type GenericSchema, safeParse } from "valibot";
import type { ApiProblem } from "./api-problem.ts";

/** A server that does not answer for so long is given up, ms; hashing a password and reading a long period take their time. */
const patienceMs = 30_000;

export interface Asked<T> {
  /** Under `/api/`, without it. */
  readonly path: string;
  readonly query?: Readonly<Record<string, string | undefined>>;
  /** Makes it a POST. */
  readonly body?: unknown;
  readonly schema: GenericSchema<T>;
}

/** The address of a question, which is its name too. */
export function addressOf({ path, query = {} }: Pick<Asked<unknown>, "path" | "query">): string {
  const given = Object.entries(query).filter(
    (pair): pair is [string, string] => pair[1] !== undefined && pair[1] !== "",
  );
  return given.length === 0 ? `/api/${path}` : `/api/${path}?${new URLSearchParams(given)}`;
}

/** Asks the server under the page's own address; whatever does not fit the schema is no answer. */
export async function ask<T>(
  asked: Asked<T>,
  {
    csrf,
    fetch: send = fetch,
  }: { readonly csrf?: string | undefined; readonly fetch?: typeof fetch | undefined } = {},
): Promise<Result<T, ApiProblem>> {
  const { body, schema } = asked;
  let reply: Response;
  try {
    reply = await send(addressOf(asked), {
      method: body === undefined ? "GET" : "POST",
      headers: {
        accept: "application/json",
        ...(body !== undefined && { "content-type": "application/json" }),
        ...(body !== undefined && csrf !== undefined && { "x-steelyard-csrf": csrf }),
      },
      ...(body !== undefined && { body: JSON.stringify(body) }),
      cache: "no-store",
      credentials: "same-origin",
      signal: AbortSignal.timeout(patienceMs),
    });
  } catch {
    return err({ type: "unreachable" });
  }
  let value: unknown;
  try {
    value = await reply.json();
  } catch {
    // A server of the page alone answers with a page; so does a proxy in front of none.
    return err(
      reply.status === 404 || reply.status === 405 ? { type: "no-records" } : { type: "unreachable" },
    );
  }
  if (reply.ok) {
    const read = safeParse(schema, value);
    return read.success ? ok(read.output) : err({ type: "update-needed" });
  }
  return err(problemOf(reply.status, value));
}

function problemOf(status: number, value: unknown): ApiProblem {
  const { problem, reason, faults } = (value ?? {}) as Readonly<Record<string, unknown>>;
  const code = typeof problem === "string" ? problem : "";
  // A way that the server does not have: it keeps no records.
  if (status === 404 && code === "not-found") return { type: "no-records" };
  return {
    type: "refused",
    status,
    problem: code,
    ...(typeof reason === "string" && { reason }),
    ...(Array.isArray(faults) && { faults: faults.flatMap(faultOf) }),
  };
}

function faultOf(value: unknown): readonly { readonly place: string; readonly message: string }[] {
  const { place, message } = (value ?? {}) as Readonly<Record<string, unknown>>;
  return typeof place === "string" && typeof message === "string" ? [{ place, message }] : [];
}
