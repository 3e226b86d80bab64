import * as v from "valibot";
import type { Route } from "./route.ts";

const state = v.strictObject({ status: v.picklist(["up", "ready", "stopping"]) });

/** The process runs. Says nothing of the store, so that nobody restarts a server because a disk is full. */
export const healthRoute: Route = {
  method: "GET",
  url: "/health",
  roles: "anyone",
  replies: { 200: state },
  handle: async () => ({ status: 200, body: { status: "up" } }),
};

/** Events can be taken: the store was written to just now. */
export const readyRoute: Route = {
  method: "GET",
  url: "/ready",
  roles: "anyone",
  replies: { 200: state, 503: state },
  handle: async (_request, { store, isStopping }) => {
    if (isStopping()) return { status: 503, body: { status: "stopping" } };
    await store.probe();
    return { status: 200, body: { status: "ready" } };
  },
};

/** For Prometheus on this machine; elsewhere there is no such page. */
export const metricsRoute: Route = {
  method: "GET",
  url: "/metrics",
  roles: "anyone",
  replies: { 200: v.string() },
  handle: async ({ ip }, { metrics }) => {
    if (!["127.0.0.1", "::1", "::ffff:127.0.0.1"].includes(ip)) {
      return { status: 404, body: { problem: "not-found" } };
    }
    return {
      status: 200,
      body: await metrics.registry.metrics(),
      headers: { "content-type": metrics.registry.contentType },
    };
  },
};
