import type { StoredSiteProfile } from "@steelyard/core/body";
import type { ChildReport } from "@steelyard/core/child";
import type { Formulary } from "@steelyard/core/dosing";
import type { FormularyIndex } from "./index-formulary.ts";

/** Who answers for a formulary. */
export interface Signer {
  readonly name: string;
  readonly role: string;
  /** 2026-11-25 */
  readonly date: string;
}

/** The formulary of a site, found good on this device. */
export interface OwnFormulary {
  readonly formulary: Formulary;
  /** SHA-256, hexadecimal: of the sign-off where it is signed, else of the whole. */
  readonly fingerprint: string;
  readonly from: "file" | "department";
  /** None where nobody has signed it. */
  readonly signers: readonly Signer[];
}

/** What a child is computed by; `own` is the formulary of the site. */
export type RunningVersions = ChildReport["versions"] & { readonly own?: OwnFormulary };

/** What the doses of a child are computed by. */
export interface FormularyInUse {
  readonly index: FormularyIndex;
  /** Absent where it is the draft that comes with the page. */
  readonly own?: OwnFormulary;
  /** The device had another one, which cannot be used: its version, and why. */
  readonly lost?: { readonly version: string; readonly why: "unreadable" | "unfit" };
}

/** What a site computes by: a part that is absent stays as it is. */
export interface SiteRules {
  readonly formulary?: FormularyInUse;
  readonly site?: { readonly profile: StoredSiteProfile | undefined };
}

/** Whether two are the same formulary in the same state. */
export function isSameFormulary(a: FormularyInUse | undefined, b: FormularyInUse | undefined): boolean {
  return (
    fingerprintOf(a) === fingerprintOf(b) && a?.own?.from === b?.own?.from && a?.lost?.why === b?.lost?.why
  );
}

/** The text that tells a formulary from every other one; empty for the draft of the page. */
export function fingerprintOf(formulary: FormularyInUse | undefined): string {
  return formulary?.own?.fingerprint ?? "";
}
