import { err, ok, type Result } from "@steelyard/core/result";

/** The link cannot be opened: another passphrase, another case, or a damaged text. Which of them, nothing tells. */
export interface LinkIssue {
  readonly type: "cannot-open";
}

/** Which case a link belongs to, and what the site alone knows. */
export interface LinkKey {
  readonly caseId: string;
  readonly passphrase: string;
}

const version = "1";
/** Rounds of PBKDF2 with SHA-256. @source owasp-password-storage */
const iterations = 600_000;
/** Bytes of an AES-GCM nonce. @source nist-sp-800-38d */
const ivBytes = 12;
const saltBytes = 16;
/** Texts are padded to a multiple of this, so that their length tells little. */
const padBytes = 64;

/**
 * A name or hospital number sealed for one case by the passphrase of the site, so that the server keeps it and cannot read it:
 * AES-256-GCM under a key by PBKDF2, bound to the case. The same text is sealed to another text each time.
 *
 * `text`: up to 200 characters. `random`: bytes by chance of the length asked for; on a page by `crypto.getRandomValues`. Throws a
 * `RangeError` where text or passphrase is empty or the text too long. Needs WebCrypto, which a page has on HTTPS or on this machine.
 *
 * @source nist-sp-800-38d
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { openLink, sealLink } from "@steelyard/records/department";
 *
 * const key = { caseId: "00000000-0000-4000-8000-000000000001", passphrase: "larch seven otter" };
 * const random = (length: number) => crypto.getRandomValues(new Uint8Array(length));
 * const sealed = await sealLink("Invented, bed 4", { ...key, random });
 * assert.deepEqual(await openLink(sealed, key), { ok: true, value: "Invented, bed 4" });
 * ```
 */
export async function sealLink(
  text: string,
  { caseId, passphrase, random }: LinkKey & { readonly random: (length: number) => Uint8Array<ArrayBuffer> },
): Promise<string> {
  if (text === "" || text.length > 200 || passphrase === "") {
    throw new RangeError(
      `Cannot seal a link as passphrase must not be empty and text must have 1 to 200 characters: it has ${text.length}`,
    );
  }
  const [salt, iv] = [random(saltBytes), random(ivBytes)];
  const plain = new TextEncoder().encode(JSON.stringify({ text }));
  const padded = new Uint8Array(Math.ceil(plain.length / padBytes) * padBytes).fill(0x20);
  padded.set(plain);
  const key = await keyOf(passphrase, salt);
  const data = await crypto.subtle.encrypt(
    { name: "AES-GCM", iv, additionalData: bound(caseId) },
    key,
    padded,
  );
  return [version, toBase64(salt), toBase64(iv), toBase64(new Uint8Array(data))].join(".");
}

/**
 * What `sealLink` sealed for this case with this passphrase.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { openLink } from "@steelyard/records/department";
 *
 * const opened = await openLink("1.AA.AA.AA", { caseId: "c", passphrase: "larch" });
 * assert.deepEqual(opened, { ok: false, error: { type: "cannot-open" } });
 * ```
 */
export async function openLink(
  sealed: string,
  { caseId, passphrase }: LinkKey,
): Promise<Result<string, LinkIssue>> {
  try {
    const [found, salt = "", iv = "", data = ""] = sealed.split(".");
    if (found !== version) return err({ type: "cannot-open" });
    const key = await keyOf(passphrase, fromBase64(salt));
    const how = { name: "AES-GCM", iv: fromBase64(iv), additionalData: bound(caseId) };
    const plain = await crypto.subtle.decrypt(how, key, fromBase64(data));
    const { text } = JSON.parse(new TextDecoder().decode(plain)) as { readonly text: string };
    return ok(text);
  } catch {
    return err({ type: "cannot-open" });
  }
}

/** A link moved to another case does not open there. */
function bound(caseId: string): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(`steelyard link ${version} ${caseId}`);
}

/** Named so for pages and for Node, whose types differ. */
type Key = Awaited<ReturnType<typeof crypto.subtle.importKey>>;

async function keyOf(passphrase: string, salt: Uint8Array<ArrayBuffer>): Promise<Key> {
  const bytes = new TextEncoder().encode(passphrase.normalize("NFKC"));
  const secret = await crypto.subtle.importKey("raw", bytes, "PBKDF2", false, ["deriveKey"]);
  return crypto.subtle.deriveKey(
    { name: "PBKDF2", hash: "SHA-256", salt, iterations },
    secret,
    { name: "AES-GCM", length: 256 },
    false,
    ["encrypt", "decrypt"],
  );
}

function toBase64(bytes: Uint8Array): string {
  return btoa(String.fromCharCode(...bytes));
}

function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
}
