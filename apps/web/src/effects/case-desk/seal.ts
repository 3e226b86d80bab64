// How cases are sealed: every event under a key of its own, made with the public key of the device, so that a case can
// be written down at any time without a passcode, and read only with it.

/** What the device keeps of the lock. Only `wrapped` needs the passcode. */
export interface Lock {
  readonly id: string;
  readonly salt: Uint8Array<ArrayBuffer>;
  readonly iterations: number;
  readonly publicKey: ArrayBuffer;
  readonly wrapped: Sealed;
}

interface Sealed {
  readonly iv: Uint8Array<ArrayBuffer>;
  readonly data: ArrayBuffer;
}

export interface SealedEvent extends Sealed {
  /** The half of the key agreement that was made for this event alone. */
  readonly ephemeral: ArrayBuffer;
}

/** Rounds of PBKDF2 with SHA-256. @source owasp-password-storage */
const iterations = 600_000;
const curve = { name: "ECDH", namedCurve: "P-256" } as const;
/** Bytes of an AES-GCM nonce. @source nist-sp-800-38d */
const ivBytes = 12;

const encoder = new TextEncoder();
const decoder = new TextDecoder();

export async function makeLock(passcode: string): Promise<{ readonly lock: Lock; readonly key: CryptoKey }> {
  const pair = await crypto.subtle.generateKey(curve, true, ["deriveBits"]);
  const salt = crypto.getRandomValues(new Uint8Array(16));
  const secret = await crypto.subtle.exportKey("pkcs8", pair.privateKey);
  const wrapped = await seal(await keyOfPasscode(passcode, salt, iterations), secret);
  const publicKey = await crypto.subtle.exportKey("raw", pair.publicKey);
  return {
    lock: { id: crypto.randomUUID(), salt, iterations, publicKey, wrapped },
    key: await privateKey(secret),
  };
}

/** The key that reads; undefined for a wrong passcode. */
export async function openLock(lock: Lock, passcode: string): Promise<CryptoKey | undefined> {
  const key = await keyOfPasscode(passcode, lock.salt, lock.iterations);
  try {
    const secret = await crypto.subtle.decrypt(
      { name: "AES-GCM", iv: lock.wrapped.iv },
      key,
      lock.wrapped.data,
    );
    return await privateKey(secret);
  } catch {
    // AES-GCM tells a wrong key from a right one, and nothing more.
    return undefined;
  }
}

export async function sealEvent(lock: Lock, event: unknown): Promise<SealedEvent> {
  const pair = await crypto.subtle.generateKey(curve, true, ["deriveBits"]);
  const ephemeral = await crypto.subtle.exportKey("raw", pair.publicKey);
  const key = await agreedKey(pair.privateKey, lock.publicKey, ephemeral);
  return { ephemeral, ...(await seal(key, encoder.encode(JSON.stringify(event)))) };
}

/** The event, or undefined where the row is damaged or was sealed for another lock. */
export async function openEvent(key: CryptoKey, { ephemeral, iv, data }: SealedEvent): Promise<unknown> {
  try {
    const agreed = await agreedKey(key, ephemeral, ephemeral);
    return JSON.parse(decoder.decode(await crypto.subtle.decrypt({ name: "AES-GCM", iv }, agreed, data)));
  } catch {
    return undefined;
  }
}

async function seal(key: CryptoKey, bytes: BufferSource): Promise<Sealed> {
  const iv = crypto.getRandomValues(new Uint8Array(ivBytes));
  return { iv, data: await crypto.subtle.encrypt({ name: "AES-GCM", iv }, key, bytes) };
}

async function keyOfPasscode(
  passcode: string,
  salt: Uint8Array<ArrayBuffer>,
  rounds: number,
): Promise<CryptoKey> {
  const material = await crypto.subtle.importKey(
    "raw",
    encoder.encode(passcode.normalize("NFKC")),
    "PBKDF2",
    false,
    ["deriveKey"],
  );
  return crypto.subtle.deriveKey(
    { name: "PBKDF2", hash: "SHA-256", salt, iterations: rounds },
    material,
    { name: "AES-GCM", length: 256 },
    false,
    ["encrypt", "decrypt"],
  );
}

/** Cannot be taken out of the browser again. */
function privateKey(secret: ArrayBuffer): Promise<CryptoKey> {
  return crypto.subtle.importKey("pkcs8", secret, curve, false, ["deriveBits"]);
}

async function agreedKey(own: CryptoKey, other: ArrayBuffer, ephemeral: ArrayBuffer): Promise<CryptoKey> {
  const publicKey = await crypto.subtle.importKey("raw", other, curve, false, []);
  const bits = await crypto.subtle.deriveBits({ name: "ECDH", public: publicKey }, own, 256);
  const material = await crypto.subtle.importKey("raw", bits, "HKDF", false, ["deriveKey"]);
  return crypto.subtle.deriveKey(
    { name: "HKDF", hash: "SHA-256", salt: ephemeral, info: encoder.encode("steelyard case event") },
    material,
    { name: "AES-GCM", length: 256 },
    false,
    ["encrypt", "decrypt"],
  );
}
