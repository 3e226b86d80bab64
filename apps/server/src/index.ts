export { createServer } from "./create-server.ts";
export { createMetrics } from "./metrics.ts";
