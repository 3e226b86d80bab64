/** How long the passphrase of the names is kept while nobody touches the page, ms; the page says five minutes. */
const idleMs = 5 * 60_000;

/** Tells when nobody has touched the page for a while, or when it is left; a device that slept is asked when it wakes. */
export function watchIdle(tell: () => void): () => void {
  let touchedAt = Date.now();
  const look = (): void => {
    if (Date.now() - touchedAt >= idleMs) tell();
  };
  const touch = (): void => {
    look();
    touchedAt = Date.now();
  };
  const timer = setInterval(look, 10_000);
  const touches = ["pointerdown", "keydown", "wheel"] as const;
  for (const kind of touches) addEventListener(kind, touch, { passive: true, capture: true });
  document.addEventListener("visibilitychange", look);
  addEventListener("pagehide", tell);
  return () => {
    clearInterval(timer);
    for (const kind of touches) removeEventListener(kind, touch, { capture: true });
    document.removeEventListener("visibilitychange", look);
    removeEventListener("pagehide", tell);
  };
}
