const key = "steelyard.asking";

/**
 * The tag of the present asking: the same while the first reading `of` the child stays the same, across a look at another screen
 * or a reload, and a new one for the next child.
 */
export function askingTag(of: string): number {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(key) ?? "null");
    if (isKept(kept) && kept.of === of) return kept.tag;
  } catch {
    // Nothing usable was kept.
  }
  const tag = (crypto.getRandomValues(new Uint16Array(1))[0] ?? 0) % 1024;
  try {
    sessionStorage.setItem(key, JSON.stringify({ of, tag }));
  } catch {
    // Storage is refused: the tag lasts as long as the screen.
  }
  return tag;
}

function isKept(value: unknown): value is { readonly of: string; readonly tag: number } {
  return (
    typeof value === "object" &&
    value !== null &&
    "of" in value &&
    "tag" in value &&
    typeof value.tag === "number"
  );
}
