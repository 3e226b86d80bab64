import type { StoredSiteProfile } from "@steelyard/core/body";
import type { Formulary, SignOff } from "@steelyard/core/dosing";
import { err, ok, type Result } from "@steelyard/core/result";
import { canonicalJson, type Sha256, verifySignOff } from "@steelyard/formulary/ownership";

/** What every page says of itself: what it was made from, who answers for it and until when. */
export interface Imprint {
  readonly softwareVersion: string;
  readonly modelVersion: string;
  readonly calibration?: {
    readonly name: string;
    readonly createdOn: string;
    readonly children: number;
    readonly signed: boolean;
  };
  readonly formulary?: {
    readonly title: string;
    readonly version: string;
    /** Of its words; English where absent. */
    readonly language?: string;
    readonly signOff?: SignOff;
  };
  /** Whether everything it rests on has been signed by the site: without that it is a draft and says so across the page. */
  readonly signed: boolean;
  /** YYYY-MM-DD. */
  readonly madeOn: string;
  readonly expiresOn: string;
  /** SHA-256 over all of this, the calibration and the formulary themselves and the choices of the paper. */
  readonly fingerprint: string;
}

export interface ImprintInput {
  /** Which paper it is, and whatever was chosen for it: size, columns, medicines. */
  readonly paper: string;
  readonly choices: Readonly<Record<string, unknown>>;
  readonly softwareVersion: string;
  readonly modelVersion: string;
  readonly site?: StoredSiteProfile | undefined;
  readonly formulary?: Formulary | undefined;
  readonly madeOn: string;
  readonly expiresOn: string;
  readonly sha256: Sha256;
}

export type ImprintIssue =
  /** The formulary was edited after somebody signed it. */
  | { readonly type: "changed-since-signed"; readonly name: string; readonly date: string }
  /** The calibration was made for another body model. */
  | { readonly type: "other-model"; readonly profileModel: string; readonly currentModel: string };

/**
 * The imprint of a paper.
 *
 * Signed = the formulary on it has a sign-off that holds, and the calibration, where there is one, is signed. A paper
 * without a formulary is a draft: nobody has put a name to it. Fails with `changed-since-signed` and `other-model`:
 * neither is ever printed.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { createHash } from "node:crypto";
 * import { createImprint } from "@steelyard/paper";
 *
 * const imprint = await createImprint({
 *   paper: "strip",
 *   choices: {},
 *   softwareVersion: "0.1.0",
 *   modelVersion: "2",
 *   madeOn: "2026-11-25",
 *   expiresOn: "2027-11-25",
 *   sha256: (text) => createHash("sha256").update(text).digest("hex"),
 * });
 * assert.ok(imprint.ok && !imprint.value.signed);
 * ```
 */
export async function createImprint(input: ImprintInput): Promise<Result<Imprint, ImprintIssue>> {
  const { site, formulary, softwareVersion, modelVersion, madeOn, expiresOn, sha256 } = input;
  if (site !== undefined && site.modelVersion !== modelVersion) {
    return err({ type: "other-model", profileModel: site.modelVersion, currentModel: modelVersion });
  }
  const verified = formulary === undefined ? undefined : await verifySignOff({ formulary, sha256 });
  if (verified?.ok === false && verified.error.type === "changed-since") {
    const { name, date } = verified.error.signOff;
    return err({ type: "changed-since-signed", name, date });
  }
  const { sha256: _, ...content } = input;
  const fingerprint = await sha256(canonicalJson(content));
  return ok({
    softwareVersion,
    modelVersion,
    ...(site === undefined ? {} : { calibration: calibrationOf(site) }),
    ...(formulary === undefined
      ? {}
      : {
          formulary: {
            title: formulary.title,
            version: formulary.version,
            ...(formulary.language === undefined ? {} : { language: formulary.language }),
            ...(verified?.ok ? { signOff: verified.value } : {}),
          },
        }),
    signed: verified?.ok === true && site?.identity.signed !== false,
    madeOn,
    expiresOn,
    fingerprint,
  });
}

function calibrationOf({ identity, evidence }: StoredSiteProfile): NonNullable<Imprint["calibration"]> {
  const { name, createdOn, signed } = identity;
  return { name, createdOn, children: evidence.children, signed };
}
