import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from "prom-client";

export interface Metrics {
  readonly registry: Registry;
  readonly acknowledged: Counter;
  readonly refused: Counter<"reason">;
  /** By route of the table and status, never by what is in the address. */
  readonly seconds: Histogram<"route" | "status">;
  readonly storeTrouble: Counter<"trouble">;
  /** Set when somebody asks for the metrics; absent from them where no folder is watched. */
  readonly diskFree: Gauge;
}

/** Counters of one server, of its own so that two can run in one process. */
export function createMetrics(): Metrics {
  const registry = new Registry();
  const registers = [registry];
  collectDefaultMetrics({ register: registry });
  return {
    registry,
    acknowledged: new Counter({
      name: "steelyard_events_acknowledged_total",
      help: "Events that are on the disk, resent ones too.",
      registers,
    }),
    refused: new Counter({
      name: "steelyard_events_refused_total",
      help: "Events that went back with a reason.",
      labelNames: ["reason"],
      registers,
    }),
    seconds: new Histogram({
      name: "steelyard_request_seconds",
      help: "From the request to the end of the answer.",
      labelNames: ["route", "status"],
      buckets: [0.002, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10],
      registers,
    }),
    storeTrouble: new Counter({
      name: "steelyard_store_trouble_total",
      help: "Requests that the store could not serve.",
      labelNames: ["trouble"],
      registers,
    }),
    diskFree: new Gauge({
      name: "steelyard_disk_free_bytes",
      help: "Free for the server in the folder of the database.",
      registers,
    }),
  };
}
