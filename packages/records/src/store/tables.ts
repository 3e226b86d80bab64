/** Every table, as Kysely sees it; `migrations/` makes them. Times are UTC texts as events have them. */
export interface Tables {
  /** What the store says of itself: `epoch`. */
  readonly store_fact: StoreFactRow;
  readonly site: SiteRow;
  readonly case_event: CaseEventRow;
  readonly purged_case: PurgedCaseRow;
  readonly audit_entry: AuditEntryRow;
  readonly device: DeviceRow;
  readonly document: DocumentRow;
  readonly signature: SignatureRow;
  readonly publication: PublicationRow;
}

interface StoreFactRow {
  readonly name: string;
  readonly value: string;
}

/** Its row is locked by every write to the site, so cursors and the audit chain grow in the order of commits. */
export interface SiteRow {
  readonly id: string;
  readonly last_cursor: number;
  readonly audit_count: number;
  readonly audit_hash: string;
}

export interface CaseEventRow {
  readonly site: string;
  /** Counts from 1 in each site; what a device has pulled up to. */
  readonly cursor: number;
  readonly id: string;
  readonly case_id: string;
  readonly type: string;
  /** By the clock of the device. */
  readonly at: string;
  readonly device: string;
  /** By the clock of the server. */
  readonly received_at: string;
  /** Clock of the device minus clock of the server, when it was sent. */
  readonly skew_ms: number | null;
  readonly model: string;
  readonly formulary: string;
  readonly calibration: string | null;
  /** The event as canonical text. */
  readonly payload: string;
}

interface PurgedCaseRow {
  readonly site: string;
  /** Takes a place among the cursors, so that devices learn of it by pulling. */
  readonly cursor: number;
  readonly case_id: string;
  readonly at: string;
  readonly events: number;
  readonly reason: string;
}

export interface AuditEntryRow {
  readonly site: string;
  /** Counts from 1 in each site, without a gap. */
  readonly position: number;
  readonly at: string;
  readonly actor: string;
  readonly action: string;
  readonly subject: string;
  /** Canonical text of an object. */
  readonly detail: string;
  readonly previous_hash: string;
  readonly hash: string;
}

interface DeviceRow {
  readonly id: string;
  readonly site: string;
  readonly name: string;
  readonly token_sha256: string;
  readonly enrolled_at: string;
  readonly revoked_at: string | null;
}

interface DocumentRow {
  readonly site: string;
  readonly sha256: string;
  readonly kind: string;
  readonly label: string;
  readonly content: string;
  readonly at: string;
  readonly by: string;
}

interface SignatureRow {
  readonly site: string;
  readonly sha256: string;
  readonly signer: string;
  readonly role: string;
  readonly at: string;
}

interface PublicationRow {
  readonly site: string;
  readonly position: number;
  readonly kind: string;
  readonly sha256: string;
  readonly at: string;
  readonly by: string;
}
