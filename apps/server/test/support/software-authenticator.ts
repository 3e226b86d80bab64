import { createHash, generateKeyPairSync, type KeyObject, randomBytes, sign } from "node:crypto";

/** What an authenticator and the browser before it say; each part can be made wrong. */
export interface Ceremony {
  readonly challenge: string;
  readonly origin: string;
  readonly rpId: string;
  /** Of `create` and `get`; another one is a response to something else. */
  readonly type?: string;
  readonly userVerified?: boolean;
  readonly counter?: number;
}

/**
 * An authenticator in software: a P-256 key, CBOR and signatures as WebAuthn level 2 has them (sections 5.8.1, 6.1, 6.5 and
 * 8.7), written from the standard and apart from the library that the server reads it with.
 */
export function createAuthenticator(): {
  readonly id: string;
  readonly register: (ceremony: Ceremony) => Record<string, unknown>;
  readonly answer: (ceremony: Ceremony, by?: KeyObject) => Record<string, unknown>;
} {
  const { privateKey, publicKey } = generateKeyPairSync("ec", { namedCurve: "P-256" });
  const credentialId = randomBytes(32);
  const id = credentialId.toString("base64url");
  const response = (parts: Record<string, unknown>) => ({
    id,
    rawId: id,
    type: "public-key",
    clientExtensionResults: {},
    response: parts,
  });
  return {
    id,
    register: (ceremony) => {
      const { x = "", y = "" } = publicKey.export({ format: "jwk" }) as { x?: string; y?: string };
      // COSE_Key: kty EC2, alg ES256, crv P-256, x, y.
      const cose = Buffer.concat([
        Buffer.from([0xa5, 0x01, 0x02, 0x03, 0x26, 0x20, 0x01, 0x21]),
        bytes(Buffer.from(x, "base64url")),
        Buffer.from([0x22]),
        bytes(Buffer.from(y, "base64url")),
      ]);
      const length = Buffer.alloc(2);
      length.writeUInt16BE(credentialId.length);
      const attested = Buffer.concat([Buffer.alloc(16), length, credentialId, cose]);
      const authData = Buffer.concat([authenticatorData(ceremony, 0x40), attested]);
      const attestation = Buffer.concat([
        Buffer.from([0xa3]),
        text("fmt"),
        text("none"),
        text("attStmt"),
        Buffer.from([0xa0]),
        text("authData"),
        bytes(authData),
      ]);
      return response({
        clientDataJSON: clientData(ceremony, "webauthn.create").toString("base64url"),
        attestationObject: attestation.toString("base64url"),
      });
    },
    answer: (ceremony, by = privateKey) => {
      const data = clientData(ceremony, "webauthn.get");
      const authData = authenticatorData(ceremony, 0);
      const signed = Buffer.concat([authData, createHash("sha256").update(data).digest()]);
      return response({
        clientDataJSON: data.toString("base64url"),
        authenticatorData: authData.toString("base64url"),
        signature: sign("sha256", signed, by).toString("base64url"),
      });
    },
  };
}

function clientData({ challenge, origin, type }: Ceremony, usual: string): Buffer {
  return Buffer.from(JSON.stringify({ type: type ?? usual, challenge, origin, crossOrigin: false }));
}

function authenticatorData({ rpId, userVerified = true, counter = 0 }: Ceremony, more: number): Buffer {
  const count = Buffer.alloc(4);
  count.writeUInt32BE(counter);
  const flags = Buffer.from([0x01 | (userVerified ? 0x04 : 0) | more]);
  return Buffer.concat([createHash("sha256").update(rpId).digest(), flags, count]);
}

/** CBOR text and byte strings. */
function text(value: string): Buffer {
  return Buffer.concat([Buffer.from([0x60 + value.length]), Buffer.from(value)]);
}
function bytes(value: Buffer): Buffer {
  const head = value.length < 256 ? [0x58, value.length] : [0x59, value.length >> 8, value.length & 0xff];
  return Buffer.concat([Buffer.from(head), value]);
}
