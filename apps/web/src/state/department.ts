import type { RefusalReason } from "@steelyard/records/sync";

/** How this device stands with the server of its department. */
export interface DepartmentState {
  /** `off`: the device has no token, and its cases stay on it. */
  readonly link: "off" | "on";
  /** Events that are on the device and not yet acknowledged. */
  readonly waiting: number;
  /** Events that the server did not take; they stay on the device. */
  readonly refused: readonly RefusalReason["type"][];
  /** Since nothing was acknowledged: no answer, no server under this address, a token that is not known, a server of another version. */
  readonly trouble?: "unreachable" | "no-server" | "not-enrolled" | "update-needed";
  /** What the department handed out and this device holds, by the hashes that came with it. */
  readonly holds: Readonly<Partial<Record<DocumentKind, string>>>;
  /** What it handed out and did not verify here; what was in use before still is. */
  readonly refusedDocuments: readonly RefusedDocument[];
  /** When the server last answered, ms since 1970 by the device. */
  readonly reachedAt?: number;
}

export const documentKinds = ["formulary", "calibration"] as const;
export type DocumentKind = (typeof documentKinds)[number];

export interface RefusedDocument {
  readonly kind: DocumentKind;
  readonly why: "changed-on-the-way" | "faulty" | "not-signed" | "edited-since-signed";
}

export const noDocuments: Pick<DepartmentState, "holds" | "refusedDocuments"> = {
  holds: {},
  refusedDocuments: [],
};

export const unlinked: DepartmentState = { link: "off", waiting: 0, refused: [], ...noDocuments };
