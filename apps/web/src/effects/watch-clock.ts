/** Tells the time at once and every second; ends with what it returns. */
export function watchClock(tell: (now: number) => void): () => void {
  const look = (): void => tell(Date.now());
  look();
  const ticking = setInterval(look, 1000);
  return () => clearInterval(ticking);
}
