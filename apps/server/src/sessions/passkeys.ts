import { randomUUID } from "node:crypto";
import {
  type AuthenticationResponseJSON,
  generateAuthenticationOptions,
  generateRegistrationOptions,
  type RegistrationResponseJSON,
  verifyAuthenticationResponse,
  verifyRegistrationResponse,
} from "@simplewebauthn/server";
import type { Accounts, Session } from "@steelyard/records/accounts";
import type { WebAuthnJson } from "@steelyard/records/department";

/** Ed25519, P-256, RSA: what authenticators have and Node's crypto holds as stable. */
const supportedAlgorithmIDs = [-8, -7, -257];
/** As long as a person looks for a key. */
const CHALLENGE_MS = 5 * 60_000;

/** The page's own name and origin: what an authenticator is bound to. */
export interface RelyingParty {
  readonly id: string;
  readonly origin: string;
}

/** None where the page has no name of its own that is set down: an address of numbers, or whatever the browser asked for. */
export function relyingParty(publicUrl: string | undefined, origin: string): RelyingParty | undefined {
  const { hostname } = new URL(origin);
  if (publicUrl === undefined && hostname !== "localhost") return undefined;
  return /^[\d.]+$|:/.test(hostname) ? undefined : { id: hostname, origin };
}

export async function beginAdding(
  accounts: Accounts,
  { person }: Session,
  { party, now }: { readonly party: RelyingParty; readonly now: string },
): Promise<WebAuthnJson> {
  const there = await accounts.passkeys.list(person.id);
  const options = await generateRegistrationOptions({
    rpName: "Steelyard",
    rpID: party.id,
    userName: person.login ?? person.name,
    userDisplayName: person.name,
    userID: new Uint8Array(Buffer.from(person.id)),
    attestationType: "none",
    supportedAlgorithmIDs,
    authenticatorSelection: { residentKey: "required", userVerification: "required" },
    excludeCredentials: there.map((row) => ({ id: row.credential_id })),
  });
  // One at a time: another beginning makes the one before it worthless.
  await accounts.passkeys.takeChallenge({ person: person.id });
  const { challenge } = options;
  await accounts.passkeys.addChallenge({
    id: randomUUID(),
    person: person.id,
    challenge,
    expiresAt: later(now),
  });
  return { ...options };
}

/** Why a passkey is not added. */
export type PasskeyProblem = "faulty-passkey" | "known-passkey" | "too-many-passkeys";

export async function finishAdding(
  accounts: Accounts,
  { person }: Session,
  {
    party,
    name,
    response,
  }: { readonly party: RelyingParty; readonly name: string; readonly response: WebAuthnJson },
): Promise<{ readonly id: string } | { readonly problem: PasskeyProblem }> {
  const [expectedChallenge] = await accounts.passkeys.takeChallenge({ person: person.id });
  if (expectedChallenge === undefined) return { problem: "faulty-passkey" };
  const verified = await verifyRegistrationResponse({
    response: response as unknown as RegistrationResponseJSON,
    expectedChallenge,
    expectedOrigin: party.origin,
    expectedRPID: party.id,
    requireUserVerification: true,
    supportedAlgorithmIDs,
  }).catch(() => undefined);
  if (!verified?.verified || verified.registrationInfo === undefined) return { problem: "faulty-passkey" };
  const { credential } = verified.registrationInfo;
  const id = randomUUID();
  const passkey = {
    id,
    credentialId: credential.id,
    publicKey: Buffer.from(credential.publicKey).toString("base64url"),
    counter: credential.counter,
    name,
  };
  const added = await accounts.passkeys.add({ person, passkey });
  return added.ok ? { id } : { problem: added.error.type };
}

export async function beginSignIn(
  accounts: Accounts,
  { party, now }: { readonly party: RelyingParty; readonly now: string },
): Promise<{ readonly ticket: string; readonly options: WebAuthnJson }> {
  // Nobody is named, so nobody learns who is there: the authenticator knows whose key it has.
  const options = await generateAuthenticationOptions({ rpID: party.id, userVerification: "required" });
  const ticket = randomUUID();
  await accounts.passkeys.addChallenge({ id: ticket, challenge: options.challenge, expiresAt: later(now) });
  return { ticket, options: { ...options } };
}

/** The person whose passkey answered the challenge, once. */
export async function finishSignIn(
  accounts: Accounts,
  {
    party,
    ticket,
    response,
  }: { readonly party: RelyingParty; readonly ticket: string; readonly response: WebAuthnJson },
): Promise<string | undefined> {
  const [expectedChallenge] = await accounts.passkeys.takeChallenge({ id: ticket });
  const credentialId = typeof response.id === "string" ? response.id : "";
  const passkey = expectedChallenge === undefined ? undefined : await accounts.passkeys.find(credentialId);
  if (expectedChallenge === undefined || passkey === undefined) return undefined;
  const verified = await verifyAuthenticationResponse({
    response: response as unknown as AuthenticationResponseJSON,
    expectedChallenge,
    expectedOrigin: party.origin,
    expectedRPID: party.id,
    requireUserVerification: true,
    credential: {
      id: passkey.credential_id,
      publicKey: new Uint8Array(Buffer.from(passkey.public_key, "base64url")),
      counter: passkey.counter,
    },
  }).catch(() => undefined);
  if (!verified?.verified) return undefined;
  const { newCounter } = verified.authenticationInfo;
  const used = await accounts.passkeys.use({ id: passkey.id, from: passkey.counter, to: newCounter });
  return used ? passkey.person : undefined;
}

function later(now: string): string {
  return new Date(Date.parse(now) + CHALLENGE_MS).toISOString();
}
