import * as v from "valibot";
import { readFreeBytes } from "../free-bytes.ts";
import type { Route } from "./route.ts";

const state = v.strictObject({ status: v.picklist(["up", "ready", "stopping", "disk-nearly-full"]) });

/** The process runs. Says nothing of the store, so that nobody restarts a server because a disk is full. */
export const healthRoute: Route = {
  method: "GET",
  url: "/health",
  roles: "anyone",
  replies: { 200: state },
  handle: async () => ({ status: 200, body: { status: "up" } }),
};

/**
 * Events can be taken: the store was written to just now, and the disk has room. A small write may still fit where the next
 * hundred do not, so the room is looked at too; events are taken as long as they fit, whatever this says.
 */
export const readyRoute: Route = {
  method: "GET",
  url: "/ready",
  roles: "anyone",
  replies: { 200: state, 503: state },
  handle: async (_request, { store, settings, isStopping }) => {
    if (isStopping()) return { status: 503, body: { status: "stopping" } };
    await store.probe();
    const free = await readFreeBytes(settings);
    if (free !== undefined && free < settings.disk.leastFreeBytes) {
      return { status: 503, body: { status: "disk-nearly-full" } };
    }
    return { status: 200, body: { status: "ready" } };
  },
};

/** For Prometheus on this machine; elsewhere there is no such page. */
export const metricsRoute: Route = {
  method: "GET",
  url: "/metrics",
  roles: "anyone",
  replies: { 200: v.string() },
  handle: async ({ ip }, { metrics, settings }) => {
    if (!["127.0.0.1", "::1", "::ffff:127.0.0.1"].includes(ip)) {
      return { status: 404, body: { problem: "not-found" } };
    }
    const free = await readFreeBytes(settings);
    if (free === undefined) metrics.diskFree.remove();
    else metrics.diskFree.set(free);
    return {
      status: 200,
      body: await metrics.registry.metrics(),
      headers: { "content-type": metrics.registry.contentType },
    };
  },
};
