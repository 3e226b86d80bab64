import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { assumptions, bytesPerEvent, capacityOf, loadOf } from "./load-model.ts";
import { nameBottleneck } from "./name-bottleneck.ts";
import { processSeconds } from "./process-seconds.ts";
import { quantilesOf } from "./quantiles.ts";
import type { RecordsResult } from "./records-result.ts";
import { evidencePage, withFigures } from "./write-pages.ts";

const docs = (name: string): string => readFileSync(join(import.meta.dirname, "../../docs", name), "utf8");
const result = JSON.parse(docs("evidence/records.json")) as RecordsResult;

describe("the run of the records that is kept", () => {
  it("is what the pages say", () => {
    expect(docs("evidence/records.md")).toBe(evidencePage(result));
    expect(docs("scale.md")).toBe(withFigures(docs("scale.md"), result));
    expect(evidencePage({ ...result, seconds: 99 })).not.toBe(evidencePage(result));
  });

  it("lost no request, and read no table from end to end at any size", () => {
    const steps = [...result.intake.postgres, ...result.intake.sqlite];
    expect(steps.length).toBeGreaterThan(6);
    for (const step of steps) expect(step).toMatchObject({ failures: 0 });
    for (const { questions } of result.growth) {
      for (const [name, { scans }] of Object.entries(questions)) expect([name, ...scans]).toEqual([name]);
    }
  });

  it("stays within what a bedside can wait for, where one device writes to a large store", () => {
    for (const { questions } of result.growth) {
      expect(questions["push of 1 event"]?.p99Ms).toBeLessThan(250);
      expect(questions["one case"]?.p99Ms).toBeLessThan(250);
    }
  });
});

describe("the load of a network", () => {
  it("follows from its assumptions", () => {
    // 5,000 x 300 x 11; over the seconds of a year, times 20; 30,000 devices x 0.7 / 30; 30,000 x 200.
    expect(loadOf(assumptions)).toEqual({
      eventsPerYear: 16_500_000,
      peakEventsPerSecond: expect.closeTo(10.464, 3),
      looksPerSecond: expect.closeTo(700, 9),
      eventsOfferedAgain: 6_000_000,
    });
  });

  it("is set against the best step of its kind", () => {
    const step = { connections: 4, eventsPerPush: 1, requestsPerSecond: 100, eventsPerSecond: 100 };
    const steps = [
      { ...step, sites: 1 },
      { ...step, sites: 64, requestsPerSecond: 300 },
      { ...step, sites: 64, requestsPerSecond: 200 },
      { ...step, sites: 64, eventsPerPush: 50, eventsPerSecond: 4_000 },
      { ...step, sites: 64, eventsPerPush: 0, requestsPerSecond: 900 },
    ] as unknown as RecordsResult["intake"]["postgres"];
    expect(capacityOf(steps)).toEqual({
      pushesPerSecond: 300,
      pushesPerSecondOfOneSite: 100,
      eventsPerSecond: 4_000,
      looksPerSecond: 900,
    });
    expect(() => bytesPerEvent([], "sqlite")).toThrow("sqlite was not filled");
  });
});

describe("what held an intake up", () => {
  const quiet = { engine: "postgres", processors: 2, connections: 16, waits: {} } as const;
  it.each([
    [
      "row of the site",
      { ...quiet, processorShares: { machine: 1.9 }, waits: { "Lock:transactionid": 0.8 } },
    ],
    ["processors", { ...quiet, processorShares: { "server 1": 0.6, machine: 1.9 } }],
    ["server process", { ...quiet, processorShares: { "server 1": 0.95, machine: 1.2 } }],
    ["commit to the disk", { ...quiet, processorShares: { "server 1": 0.4 }, waits: { "IO:WALSync": 0.6 } }],
    ["commit to the disk", { ...quiet, engine: "sqlite", processorShares: { "server 1": 0.4 } }],
    ["one after the other", { ...quiet, connections: 1, processorShares: { "server 1": 0.2 } }],
  ] as const)("is named from what was seen: %s", (name, evidence) => {
    expect(nameBottleneck(evidence)).toBe(name);
  });

  it("is seen by quantiles of the nearest rank and by the processor time of this process", () => {
    const times = Array.from({ length: 100 }, (_, i) => 100 - i);
    expect(quantilesOf(times)).toEqual({ p50Ms: 50, p95Ms: 95, p99Ms: 99 });
    const own = process.cpuUsage();
    const seen = processSeconds(process.pid, { children: false });
    expect(seen).toBeGreaterThan(0);
    expect(Math.abs(seen - (own.user + own.system) / 1e6)).toBeLessThan(1);
  });
});
