/** Under TLS the browser itself keeps other hosts and plain HTTP from setting a cookie of this name. */
const nameOf = (secure: boolean): string => (secure ? "__Host-steelyard" : "steelyard-session");

/** The header that gives a browser its session, until it is closed; without a token, the one that takes it away. */
export function sessionCookie(token: string | undefined, { secure }: { readonly secure: boolean }): string {
  const parts = [`${nameOf(secure)}=${token ?? ""}`, "Path=/", "HttpOnly", "SameSite=Strict"];
  if (secure) parts.push("Secure");
  if (token === undefined) parts.push("Max-Age=0");
  return parts.join("; ");
}

/** The token of a request; nothing where there is none, or more than one. */
export function readSessionCookie(
  header: string | undefined,
  { secure }: { readonly secure: boolean },
): string | undefined {
  const start = `${nameOf(secure)}=`;
  const found = (header ?? "")
    .split(";")
    .map((part) => part.trim())
    .filter((part) => part.startsWith(start));
  const token = found[0]?.slice(start.length);
  return found.length === 1 && token !== undefined && /^[A-Za-z0-9_-]{43}$/.test(token) ? token : undefined;
}
