import type { Result } from "@steelyard/core/result";
import { type Kysely, sql } from "kysely";
import type { CaseEvent } from "../case/case-event.ts";
import type { CasesQuery } from "../department/casebook-wire.ts";
import type { DocumentKind, DocumentsAnswer, WholeDocument } from "../department/documents-wire.ts";
import { type AppendOutcome, type AppendRequest, appendEvents } from "./append-events.ts";
import {
  type Device,
  type EnrolRequest,
  enrolDevice,
  findDevice,
  listDevices,
  revokeDevice,
} from "./devices.ts";
import type { Engine } from "./dialect/engine.ts";
import { addDocument, type DocumentIssue, publishDocument, signDocument } from "./documents.ts";
import { type HandedOut, handedOut } from "./handed-out.ts";
import { type AuditSearch, listAudit } from "./list-audit.ts";
import { latestCases, listCases, readCases } from "./list-cases.ts";
import { findDocument, listDocuments } from "./list-documents.ts";
import { type PurgeRequest, purgeCases } from "./purge-cases.ts";
import { type ChangePage, cursorOf, type ReadRequest, readCaseEvents, readChanges } from "./read-events.ts";
import { putSealedLink, readSealedLink } from "./sealed-links.ts";
import { type AuditNote, withSiteLocked } from "./site-lock.ts";
import type { AuditEntryRow, Tables } from "./tables.ts";
import { type AuditReport, verifyAudit } from "./verify-audit.ts";

/** The records, whatever the engine. Every write that resolves is on the disk. */
export interface Store {
  readonly engine: Engine;
  /** For other parts of this package; apps use the functions below. */
  readonly db: Kysely<Tables>;
  readonly clock: () => string;
  /** Names this life of the store; a restored backup has another, so that devices send again what it lacks. */
  readonly epoch: string;
  /** Makes a site known; harmless where it is. */
  readonly addSite: (site: string) => Promise<void>;
  readonly listSites: () => Promise<readonly string[]>;
  readonly appendEvents: (request: AppendRequest) => Promise<readonly AppendOutcome[]>;
  readonly readChanges: (request: ReadRequest) => Promise<ChangePage>;
  readonly readCaseEvents: (of: {
    readonly site: string;
    readonly caseId: string;
  }) => Promise<readonly CaseEvent[]>;
  /** The place of an event among the changes of its site. */
  readonly cursorOf: (of: { readonly site: string; readonly id: string }) => Promise<number>;
  readonly listCases: (query: CasesQuery & { readonly site: string }) => ReturnType<typeof listCases>;
  readonly latestCases: (of: Parameters<typeof latestCases>[1]) => ReturnType<typeof latestCases>;
  readonly readCases: (of: Parameters<typeof readCases>[1]) => ReturnType<typeof readCases>;
  readonly readSealedLink: (of: {
    readonly site: string;
    readonly actor: string;
    readonly caseId: string;
  }) => Promise<string | undefined>;
  readonly putSealedLink: (of: {
    readonly site: string;
    readonly actor: string;
    readonly caseId: string;
    readonly sealed: string | null;
  }) => Promise<boolean>;
  readonly purgeCases: (
    request: PurgeRequest,
  ) => Promise<{ readonly cases: number; readonly events: number }>;
  readonly note: (note: AuditNote & { readonly site: string }) => Promise<void>;
  /** The log of a site, latest first, before a position. */
  readonly readAudit: (of: {
    readonly site: string;
    readonly before?: number;
    readonly limit: number;
  }) => Promise<readonly AuditEntryRow[]>;
  readonly listAudit: (search: AuditSearch) => ReturnType<typeof listAudit>;
  /** Of every site, or of one. */
  readonly verifyAudit: (site?: string) => Promise<AuditReport>;
  readonly enrolDevice: (request: EnrolRequest) => Promise<Device>;
  readonly findDevice: (token: string) => Promise<Device | undefined>;
  readonly listDevices: (site: string) => Promise<readonly Device[]>;
  readonly revokeDevice: (of: {
    readonly site: string;
    readonly actor: string;
    readonly id: string;
  }) => Promise<boolean>;
  readonly addDocument: (document: {
    readonly site: string;
    readonly actor: string;
    readonly kind: DocumentKind;
    readonly label: string;
    readonly content: string;
  }) => ReturnType<typeof addDocument>;
  readonly signDocument: (of: {
    readonly site: string;
    readonly actor: string;
    readonly sha256: string;
    readonly registration: string;
  }) => Promise<Result<void, DocumentIssue>>;
  readonly publishDocument: (of: {
    readonly site: string;
    readonly actor: string;
    readonly sha256: string;
  }) => Promise<Result<void, DocumentIssue>>;
  readonly listDocuments: (of: {
    readonly site: string;
    readonly kind: DocumentKind;
  }) => Promise<DocumentsAnswer>;
  readonly findDocument: (of: {
    readonly site: string;
    readonly sha256: string;
  }) => Promise<WholeDocument | undefined>;
  readonly handedOut: (of: {
    readonly site: string;
    readonly kind: DocumentKind;
    readonly held?: string;
  }) => Promise<HandedOut | "held" | undefined>;
  /** Writes one small thing. Rejects where the engine does not answer or cannot write. */
  readonly probe: () => Promise<void>;
  readonly close: () => Promise<void>;
}

interface StoreParts {
  readonly db: Kysely<Tables>;
  readonly engine: Engine;
  readonly clock: () => string;
  readonly epoch: string;
}

/** Binds every function of this folder to one database and one clock. */
export function createStore({ db, engine, clock, epoch }: StoreParts): Store {
  return {
    engine,
    db,
    clock,
    epoch,
    addSite: async (site) => {
      await sql`INSERT INTO site (id, last_cursor) VALUES (${site}, 0) ON CONFLICT DO NOTHING`.execute(db);
    },
    listSites: async () =>
      (await db.selectFrom("site").select("id").orderBy("id").execute()).map(({ id }) => id),
    appendEvents: (request) => appendEvents(db, clock, request),
    readChanges: (request) => readChanges(db, request),
    readCaseEvents: (of) => readCaseEvents(db, of),
    cursorOf: (of) => cursorOf(db, of),
    listCases: (query) => listCases(db, query),
    latestCases: (of) => latestCases(db, of),
    readCases: (of) => readCases(db, of),
    readSealedLink: (of) => readSealedLink(db, clock, of),
    putSealedLink: (of) => putSealedLink(db, clock, of),
    purgeCases: (request) => purgeCases(db, clock, request),
    note: ({ site, ...note }) => withSiteLocked(db, { site, clock }, (locked) => locked.note(note)),
    readAudit: ({ site, before, limit }) =>
      db
        .selectFrom("audit_entry")
        .selectAll()
        .where("site", "=", site)
        .where("position", "<", before ?? Number.MAX_SAFE_INTEGER)
        .orderBy("position", "desc")
        .limit(limit)
        .execute(),
    listAudit: (search) => listAudit(db, search),
    verifyAudit: (site) => verifyAudit(db, site),
    enrolDevice: (request) => enrolDevice(db, clock, request),
    findDevice: (token) => findDevice(db, token),
    listDevices: (site) => listDevices(db, site),
    revokeDevice: (of) => revokeDevice(db, clock, of),
    addDocument: (document) => addDocument(db, clock, document),
    signDocument: (of) => signDocument(db, clock, of),
    publishDocument: (of) => publishDocument(db, clock, of),
    listDocuments: (of) => listDocuments(db, of),
    findDocument: (of) => findDocument(db, of),
    handedOut: (of) => handedOut(db, of),
    probe: async () => {
      await sql`INSERT INTO store_fact (name, value) VALUES ('probed', ${clock()}) ON CONFLICT (name) DO UPDATE SET value = excluded.value`.execute(
        db,
      );
    },
    close: () => db.destroy(),
  };
}
