import { readSiteProfile, type StoredSiteProfile } from "@steelyard/core/body";
import type { DocumentInForce, DocumentsInForce } from "@steelyard/records/sync";
import type { DocumentKind, RefusedDocument } from "../../state/department.ts";
import { readFormulary } from "./read-formulary.ts";
import type { KeptFormulary } from "./rules-store.ts";

export interface ReadDocuments {
  /** What the device is to compute by; `null` where none is in force any more. */
  readonly formulary?: Omit<KeptFormulary, "checkedBy"> | null;
  readonly site?: StoredSiteProfile | null;
  readonly refused: readonly RefusedDocument[];
}

/** What a department hands out, checked on this device: the bytes, the shape, the sign-off. One that does not verify is refused. */
export async function readDocuments(
  { formulary, calibration }: DocumentsInForce,
  sha256: (text: string) => Promise<string>,
): Promise<ReadDocuments> {
  const refused: RefusedDocument[] = [];
  const refuse = (kind: DocumentKind, why: RefusedDocument["why"]): object => {
    refused.push({ kind, why });
    return {};
  };
  const ofFormulary = async (document: DocumentInForce): Promise<object> => {
    const { content: text, sha256: name } = document;
    if ((await sha256(text)) !== name) return refuse("formulary", "changed-on-the-way");
    const read = await readFormulary(text, sha256);
    if (!read.ok) return refuse("formulary", whyOf(read.error.type));
    const { fingerprint, signers, formulary: own } = read.value;
    if (signers.length === 0) return refuse("formulary", "not-signed");
    const kept = { text: JSON.stringify(own), version: own.version, fingerprint, signers } as const;
    return { formulary: { ...kept, from: "department", document: name } };
  };
  const ofCalibration = async (document: DocumentInForce): Promise<object> => {
    if ((await sha256(document.content)) !== document.sha256)
      return refuse("calibration", "changed-on-the-way");
    const profile = readSiteProfile(parsed(document.content));
    if (!profile.ok) return refuse("calibration", "faulty");
    return profile.value.identity.signed ? { site: profile.value } : refuse("calibration", "not-signed");
  };
  return {
    ...(formulary === null && { formulary }),
    ...(formulary && (await ofFormulary(formulary))),
    ...(calibration === null && { site: null }),
    ...(calibration && (await ofCalibration(calibration))),
    refused,
  };
}

function whyOf(type: "too-large" | "faulty" | "signed-by-nobody" | "changed-since"): RefusedDocument["why"] {
  if (type === "changed-since") return "edited-since-signed";
  return type === "signed-by-nobody" ? "not-signed" : "faulty";
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
