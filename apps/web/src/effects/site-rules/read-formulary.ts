import type { Formulary, SignOff } from "@steelyard/core/dosing";
import { err, ok, type Result } from "@steelyard/core/result";
import { type FormularyFault, validateFormulary } from "@steelyard/formulary";
import { canonicalJson, readFormularyText, verifySignOff } from "@steelyard/formulary/ownership";
import type { Signer } from "../../state/site-rules.ts";

/** Why a formulary cannot be used. */
export type FormularyRefusal =
  | { readonly type: "too-large"; readonly mostMb: number }
  | { readonly type: "faulty"; readonly faults: readonly FormularyFault[] }
  /** It calls itself signed, and does not say by whom. */
  | { readonly type: "signed-by-nobody" }
  /** Something was edited after it was signed. */
  | { readonly type: "changed-since"; readonly signers: readonly Signer[] };

export interface ReadFormulary {
  readonly formulary: Formulary;
  readonly fingerprint: string;
  /** None where it is unsigned. */
  readonly signers: readonly Signer[];
}

/** Eight times the draft; a text beyond it would hold up a phone. */
const mostMb = 5;

/** The formulary in a text, whole, without a fault and as it was signed, or why not. */
export async function readFormulary(
  text: string,
  sha256: (text: string) => Promise<string>,
): Promise<Result<ReadFormulary, FormularyRefusal>> {
  if (text.length > mostMb * 1e6) return err({ type: "too-large", mostMb });
  const read = parsed(text.replace(/^\ufeff/, ""));
  const checked = read.ok ? validateFormulary(read.value) : read;
  if (!checked.ok) return err({ type: "faulty", faults: checked.error });
  const formulary = checked.value;
  const { signed, signOff } = formulary;
  if (!signed && signOff === undefined) {
    return ok({ formulary, fingerprint: await sha256(canonicalJson(formulary)), signers: [] });
  }
  const verified = await verifySignOff({ formulary, sha256 });
  if (verified.ok) {
    return ok({ formulary, fingerprint: verified.value.fingerprint, signers: signersOf(verified.value) });
  }
  if (signOff === undefined) return err({ type: "signed-by-nobody" });
  return err({ type: "changed-since", signers: signersOf(signOff) });
}

function signersOf({ name, role, date, second }: SignOff): readonly Signer[] {
  return [{ name, role, date }, ...(second === undefined ? [] : [second])];
}

/** Whether this version of the page can compute by a formulary that an earlier one found good. */
export function stillFits(formulary: unknown): boolean {
  return validateFormulary(formulary).ok;
}

function parsed(text: string): ReturnType<typeof readFormularyText> {
  try {
    return readFormularyText(text);
  } catch (cause) {
    // Nested deeper than the engine can follow: no formulary is.
    if (cause instanceof RangeError) return err([{ place: "file", message: "is nested too deep" }]);
    throw cause;
  }
}
