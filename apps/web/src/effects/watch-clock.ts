/**
 * Tells the time at once and again and again; ends with what it returns. Four times a second, so that a clock that counts
 * from any moment is never a whole second late.
 */
export function watchClock(tell: (now: number) => void): () => void {
  const look = (): void => tell(Date.now());
  look();
  const ticking = setInterval(look, 250);
  return () => clearInterval(ticking);
}
