/** Every table, as Kysely sees it; `migrations/` makes them. Times are UTC texts as events have them. */
export interface Tables {
  /** What the store says of itself: `epoch`. */
  readonly store_fact: StoreFactRow;
  readonly site: SiteRow;
  readonly case_event: CaseEventRow;
  readonly case_summary: CaseSummaryRow;
  readonly sealed_link: SealedLinkRow;
  readonly purged_case: PurgedCaseRow;
  readonly audit_entry: AuditEntryRow;
  readonly device: DeviceRow;
  readonly document: DocumentRow;
  readonly signature: SignatureRow;
  readonly publication: PublicationRow;
  readonly person: PersonRow;
  readonly credential: CredentialRow;
  readonly passkey: PasskeyRow;
  readonly session: SessionRow;
  readonly invitation: InvitationRow;
  readonly set_up_code: SetUpCodeRow;
  readonly challenge: ChallengeRow;
  readonly failed_attempt: FailedAttemptRow;
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

/** What the events of a case come to; never written but in the transaction that adds some, and made anew from them at any time. */
export interface CaseSummaryRow {
  readonly site: string;
  readonly case_id: string;
  readonly code: string;
  readonly started_at: string;
  /** The start of the case where it is not deleted. */
  readonly listed_at: string | null;
  /** The start of the case where it is not closed either. */
  readonly open_at: string | null;
  /** The start of the case where it has an estimate and nobody has weighed the child yet. */
  readonly due_at: string | null;
  /** The start of the case where it has an estimate and a later weight. */
  readonly weighed_at: string | null;
  readonly closed_at: string | null;
  readonly estimate_kg: number | null;
  readonly low95_kg: number | null;
  readonly high95_kg: number | null;
  readonly ideal_kg: number | null;
  readonly later_kg: number | null;
  readonly later_on: string | null;
  readonly doses: number;
  readonly model: string;
  readonly formulary: string;
  readonly calibration: string | null;
  /** By the clock of the server, the last of its events. */
  readonly touched_at: string;
}

interface SealedLinkRow {
  readonly site: string;
  readonly case_id: string;
  /** By `sealLink`; the store cannot read it. */
  readonly sealed: string;
  readonly at: string;
  readonly by: string;
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

export interface DocumentRow {
  readonly site: string;
  readonly sha256: string;
  readonly kind: string;
  readonly label: string;
  readonly content: string;
  readonly at: string;
  readonly by: string;
}

export interface SignatureRow {
  readonly site: string;
  readonly sha256: string;
  readonly signer: string;
  readonly role: string;
  readonly at: string;
  /** Licence, number and register as the signer wrote them; none in what was signed before it was asked for. */
  readonly registration: string | null;
}

export interface PublicationRow {
  readonly site: string;
  readonly position: number;
  readonly kind: string;
  readonly sha256: string;
  readonly at: string;
  readonly by: string;
  /** Whose signatures it rests on, by commas; none in what was published before it was kept. */
  readonly signers: string | null;
}

export interface PersonRow {
  readonly id: string;
  readonly site: string;
  readonly name: string;
  /** One person in the whole store has it; absent until the invitation was taken. */
  readonly login: string | null;
  /** Separated by commas. */
  readonly roles: string;
  readonly state: "invited" | "active" | "removed";
  readonly created_at: string;
  readonly joined_at: string | null;
  readonly last_sign_in_at: string | null;
}

interface CredentialRow {
  readonly person: string;
  /** Salt, cost and hash as one text; see `people/password`. */
  readonly password: string;
  readonly set_at: string;
}

export interface PasskeyRow {
  readonly id: string;
  readonly person: string;
  readonly credential_id: string;
  /** COSE key, base64url. */
  readonly public_key: string;
  readonly counter: number;
  readonly name: string;
  readonly at: string;
  readonly last_used_at: string | null;
}

/** The token itself is in the browser only; whoever reads the database cannot be signed in by it. */
interface SessionRow {
  readonly token_sha256: string;
  readonly person: string;
  readonly started_at: string;
  readonly used_at: string;
}

interface InvitationRow {
  readonly person: string;
  readonly code_sha256: string;
  readonly expires_at: string;
}

interface SetUpCodeRow {
  readonly code_sha256: string;
  readonly site: string;
  readonly expires_at: string;
}

interface ChallengeRow {
  readonly id: string;
  readonly person: string | null;
  readonly challenge: string;
  readonly expires_at: string;
}

export interface FailedAttemptRow {
  /** What was tried and a hash of its name: somebody types a password where the login goes. */
  readonly subject: string;
  readonly count: number;
  readonly last_at: string;
  readonly until: string;
}
