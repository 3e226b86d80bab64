// The devices of an intake, in a process of its own so that its processor time is its own: each sends a push, waits for the
// answer, and sends the next. Takes its orders as JSON in the first argument and prints what it saw as JSON.
import { randomUUID } from "node:crypto";
import { Agent, request } from "node:http";
import { quantilesOf } from "./quantiles.ts";

export interface LoadOrder {
  readonly urls: readonly string[];
  /** Of the devices; the connections use them in turn. */
  readonly tokens: readonly string[];
  readonly connections: number;
  /** 0: asks for news instead, where there are none, as every open page does twice a minute. */
  readonly eventsPerPush: number;
  readonly seconds: number;
}

export interface LoadOutcome {
  readonly requests: number;
  readonly events: number;
  readonly failures: number;
  readonly seconds: number;
  readonly p50Ms: number;
  readonly p95Ms: number;
  readonly p99Ms: number;
  readonly cpuSeconds: number;
}

const order = JSON.parse(process.argv[2] ?? "{}") as LoadOrder;
const agent = new Agent({ keepAlive: true, maxSockets: order.connections });
const versions = { software: "0.1.0", model: "2026.1", formulary: "2026-11-25", formularySigned: false };
const times: number[] = [];
let [events, failures] = [0, 0];

function bodyOf(): string {
  const at = new Date().toISOString();
  const caseId = randomUUID();
  const made = Array.from({ length: order.eventsPerPush }, () => ({
    format: 1,
    id: randomUUID(),
    caseId,
    at,
    versions,
    type: "estimate",
    estimate: { totalKg: 18.02, low95Kg: 15.7, high95Kg: 20.6, idealKg: 17.6, rests: ["lengthCm", "armMm"] },
  }));
  return JSON.stringify({ protocol: 1, sentAt: at, events: made });
}

/** The events acknowledged, or 1 for an answer that there is no news. */
function exchange(url: string, token: string): Promise<number> {
  return new Promise((resolve, reject) => {
    const headers = { authorization: `Bearer ${token}`, "content-type": "application/json" };
    const isPush = order.eventsPerPush > 0;
    const path = isPush ? "push" : "pull?protocol=1&since=999999999&limit=500";
    const method = isPush ? "POST" : "GET";
    const sent = request(`${url}/api/sync/${path}`, { method, agent, headers }, async (reply) => {
      let text = "";
      for await (const chunk of reply) text += chunk;
      const answer =
        reply.statusCode === 200 ? (JSON.parse(text) as { acknowledged?: unknown[] }) : undefined;
      resolve(answer === undefined ? 0 : isPush ? (answer.acknowledged?.length ?? 0) : 1);
    });
    sent.on("error", reject);
    sent.end(isPush ? bodyOf() : undefined);
  });
}

async function device(number: number, until: number): Promise<void> {
  const url = order.urls[number % order.urls.length] ?? "";
  const token = order.tokens[number % order.tokens.length] ?? "";
  while (performance.now() < until) {
    const start = performance.now();
    const acknowledged = await exchange(url, token).catch(() => 0);
    times.push(performance.now() - start);
    events += acknowledged;
    if (acknowledged === 0) failures++;
  }
}

const start = performance.now();
const until = start + order.seconds * 1_000;
await Promise.all(Array.from({ length: order.connections }, (_, number) => device(number, until)));
const seconds = (performance.now() - start) / 1_000;
agent.destroy();
const { user, system } = process.cpuUsage();
const outcome: LoadOutcome = {
  requests: times.length,
  events,
  failures,
  seconds,
  ...quantilesOf(times),
  cpuSeconds: (user + system) / 1e6,
};
process.stdout.write(JSON.stringify(outcome));
