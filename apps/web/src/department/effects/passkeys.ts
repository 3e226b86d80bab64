import type { WebAuthnJson } from "@steelyard/records/department";

/** The browser's own reader and writer of WebAuthn's JSON, where it has them. */
interface WithJson {
  parseCreationOptionsFromJSON(options: unknown): PublicKeyCredentialCreationOptions;
  parseRequestOptionsFromJSON(options: unknown): PublicKeyCredentialRequestOptions;
}

export function hasPasskeys(): boolean {
  return typeof PublicKeyCredential === "function" && "parseCreationOptionsFromJSON" in PublicKeyCredential;
}

/** Makes a passkey; undefined where the person or the device did not want to. */
export async function makePasskey(options: WebAuthnJson): Promise<WebAuthnJson | undefined> {
  const { parseCreationOptionsFromJSON } = PublicKeyCredential as unknown as WithJson;
  return written(() => navigator.credentials.create({ publicKey: parseCreationOptionsFromJSON(options) }));
}

/** Proves a passkey; undefined where the person or the device did not want to. */
export async function provePasskey(options: WebAuthnJson): Promise<WebAuthnJson | undefined> {
  const { parseRequestOptionsFromJSON } = PublicKeyCredential as unknown as WithJson;
  return written(() => navigator.credentials.get({ publicKey: parseRequestOptionsFromJSON(options) }));
}

async function written(get: () => Promise<Credential | null>): Promise<WebAuthnJson | undefined> {
  try {
    const credential = await get();
    return credential === null
      ? undefined
      : ((credential as PublicKeyCredential).toJSON() as unknown as WebAuthnJson);
  } catch {
    // Cancelled, timed out, or not possible on this device: the browser tells no more on purpose.
    return undefined;
  }
}
