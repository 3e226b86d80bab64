export { buildTransport, type DataSet } from "./build-transport.ts";
export { readTransport, type TransportFile, type TransportIssue } from "./read-transport.ts";
