export type { AppendOutcome, AppendRequest } from "./append-events.ts";
export type { Device } from "./devices.ts";
export type { DocumentIssue, DocumentKind, SiteDocument } from "./documents.ts";
export { type DatabaseSettings, openStore, type StoreOptions } from "./open-store.ts";
export type { Change, ChangePage } from "./read-events.ts";
export type { AuditNote } from "./site-lock.ts";
export type { Store } from "./store.ts";
export type { AuditEntryRow } from "./tables.ts";
export type { AuditFault, AuditReport } from "./verify-audit.ts";
