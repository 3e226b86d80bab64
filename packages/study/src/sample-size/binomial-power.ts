/** P(X >= k) for X binomial (n, p), summed from the largest term outwards through logarithms. */
export function atLeast(k: number, n: number, p: number): number {
  if (k <= 0) return 1;
  if (k > n || p <= 0) return 0;
  if (p >= 1) return 1;
  const odds = p / (1 - p);
  const mode = Math.min(n, Math.floor((n + 1) * p));
  // Terms relative to the mode's, so that nothing underflows; then divided by their sum.
  let [inside, total] = [0, 0];
  let term = 1;
  for (let i = mode; i >= 0 && term > 1e-18; i--) {
    total += term;
    if (i >= k) inside += term;
    term *= i / ((n - i + 1) * odds);
  }
  term = (odds * (n - mode)) / (mode + 1);
  for (let i = mode + 1; i <= n && term > 1e-18; i++) {
    total += term;
    if (i >= k) inside += term;
    term *= (odds * (n - i)) / (i + 1);
  }
  return inside / total;
}
