import type { PersonRole } from "@steelyard/records/department";

/** Who may use a way in, said a second time and apart from the table of routes; `ok` is the status of `send` for who may. */
export interface RouteRoles {
  readonly may: "anyone" | readonly ("device" | PersonRole)[];
  readonly send?: Readonly<Record<string, unknown>>;
  readonly ok: number;
}

const people = ["clinician", "reviewer", "researcher", "administrator"] as const;
const documentReaders = ["clinician", "reviewer", "administrator"] as const;
const noDocument = "0".repeat(64);
const unknown = "00000000-0000-4000-8000-00000000dead";
const password = "violet kettle sings at noon";
const pushed = { protocol: 1, sentAt: "2026-11-25T03:12:00.000Z", events: [] };
const pulled = { protocol: "1", since: "0", limit: "1" };

/** Every route has its row: a new one fails `route-roles.test.ts` until somebody says here who may use it. */
export const routeRoles: Readonly<Record<string, RouteRoles>> = {
  "GET /health": { may: "anyone", ok: 200 },
  "GET /ready": { may: "anyone", ok: 200 },
  "GET /metrics": { may: "anyone", ok: 200 },
  "POST /api/sync/push": { may: ["device"], send: pushed, ok: 200 },
  "GET /api/sync/pull": { may: ["device"], send: pulled, ok: 200 },
  "GET /api/session": { may: "anyone", ok: 200 },
  "POST /api/set-up": {
    may: "anyone",
    send: { code: "X", name: "Cara Hollis", login: "cara", password },
    ok: 409,
  },
  "POST /api/session": { may: "anyone", send: { login: "nobody-here", password }, ok: 401 },
  "POST /api/join": { may: "anyone", send: { code: "X", login: "cara", password }, ok: 403 },
  "POST /api/session/end": { may: people, send: {}, ok: 200 },
  "GET /api/sessions": { may: people, ok: 200 },
  "POST /api/sessions/end": { may: people, send: { password: "wrong" }, ok: 401 },
  "GET /api/passkeys": { may: people, ok: 200 },
  "POST /api/passkeys/begin": { may: people, send: {}, ok: 200 },
  "POST /api/passkeys": { may: people, send: { name: "Key", response: {} }, ok: 422 },
  "POST /api/passkeys/remove": { may: people, send: { id: unknown }, ok: 404 },
  "POST /api/session/passkey/begin": { may: "anyone", send: {}, ok: 200 },
  "POST /api/session/passkey": { may: "anyone", send: { ticket: unknown, response: {} }, ok: 401 },
  "GET /api/people": { may: ["administrator"], ok: 200 },
  "POST /api/invitations": {
    may: ["administrator"],
    send: { name: "Cara Hollis", roles: ["clinician"] },
    ok: 200,
  },
  "POST /api/people/change": { may: ["administrator"], send: { id: unknown, unlock: true }, ok: 404 },
  "GET /api/devices": { may: ["administrator"], ok: 200 },
  "POST /api/devices": { may: ["administrator"], send: { name: "Resus 2" }, ok: 200 },
  "POST /api/devices/revoke": { may: ["administrator"], send: { id: unknown }, ok: 404 },
  "GET /api/cases": { may: ["clinician"], ok: 200 },
  "GET /api/case": { may: ["clinician"], send: { caseId: unknown }, ok: 404 },
  "POST /api/case/event": { may: ["clinician"], send: { event: {} }, ok: 422 },
  "GET /api/case/link": { may: ["clinician"], send: { caseId: unknown }, ok: 404 },
  "POST /api/case/link": { may: ["clinician"], send: { caseId: unknown, sealed: null }, ok: 404 },
  "GET /api/accuracy": { may: ["clinician", "reviewer", "researcher"], ok: 200 },
  "GET /api/export": { may: ["researcher"], ok: 200 },
  "POST /api/calibration/fit": { may: ["reviewer", "clinician"], send: { name: "Larch ward" }, ok: 422 },
  "GET /api/documents": { may: documentReaders, send: { kind: "formulary" }, ok: 200 },
  "GET /api/document": { may: documentReaders, send: { sha256: noDocument }, ok: 404 },
  "POST /api/documents": {
    may: documentReaders,
    send: { kind: "calibration", label: "A label", content: "{" },
    ok: 422,
  },
  "POST /api/documents/sign": {
    may: ["reviewer"],
    send: { sha256: noDocument, password: "wrong", registration: "x" },
    ok: 401,
  },
  "POST /api/documents/publish": {
    may: ["reviewer", "administrator"],
    send: { sha256: noDocument },
    ok: 404,
  },
  "GET /api/sync/documents": { may: ["device"], send: { protocol: "1" }, ok: 200 },
  "GET /api/audit": { may: ["administrator"], ok: 200 },
  "POST /api/audit/verify": { may: ["administrator"], send: {}, ok: 200 },
  "POST /api/password": { may: people, send: { current: "wrong", next: password }, ok: 401 },
};
