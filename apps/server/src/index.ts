export { createServer } from "./create-server.ts";
