import * as v from "valibot";
import { instant, shownName, uuid } from "./wire.ts";

/** Options and responses are JSON as WebAuthn level 3 has them; the library of either side reads them. */
export type WebAuthnJson = Readonly<Record<string, unknown>>;
const webAuthnJson: v.GenericSchema<WebAuthnJson> = v.record(v.string(), v.unknown());

export interface Passkey {
  readonly id: string;
  readonly name: string;
  readonly at: string;
  readonly lastUsedAt?: string | undefined;
}
export const passkeysAnswerSchema: v.GenericSchema<{ readonly passkeys: readonly Passkey[] }> =
  v.strictObject({
    passkeys: v.array(
      v.strictObject({ id: uuid, name: shownName, at: instant, lastUsedAt: v.optional(instant) }),
    ),
  });

export const passkeyOptionsSchema: v.GenericSchema<{ readonly options: WebAuthnJson }> = v.strictObject({
  options: webAuthnJson,
});
export interface AddPasskeyRequest {
  readonly name: string;
  readonly response: WebAuthnJson;
}
export const addPasskeyRequestSchema: v.GenericSchema<AddPasskeyRequest> = v.strictObject({
  name: shownName,
  response: webAuthnJson,
});
export const passkeyIdSchema: v.GenericSchema<{ readonly id: string }> = v.strictObject({ id: uuid });
export const removedSchema: v.GenericSchema<{ readonly removed: true }> = v.strictObject({
  removed: v.literal(true),
});

/** `ticket` names the challenge; it goes back with the response, once. */
export interface PasskeySignInOptions {
  readonly ticket: string;
  readonly options: WebAuthnJson;
}
export const passkeySignInOptionsSchema: v.GenericSchema<PasskeySignInOptions> = v.strictObject({
  ticket: uuid,
  options: webAuthnJson,
});
export interface PasskeySignInRequest {
  readonly ticket: string;
  readonly response: WebAuthnJson;
}
export const passkeySignInRequestSchema: v.GenericSchema<PasskeySignInRequest> = v.strictObject({
  ticket: uuid,
  response: webAuthnJson,
});
