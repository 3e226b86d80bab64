import type { StudyEffect } from "./study-effect.ts";

/** tau^2 between sites, Cochran's Q and the typical variance within a site (Higgins and Thompson). */
export function betweenVariance(
  effects: readonly StudyEffect[],
  method: "reml" | "dersimonian-laird",
): { readonly tauSquared: number; readonly q: number; readonly typicalVariance: number } {
  const k = effects.length;
  let [w, w2, we] = [0, 0, 0];
  for (const { effect, variance } of effects) {
    w += 1 / variance;
    w2 += 1 / variance ** 2;
    we += effect / variance;
  }
  const fixed = we / w;
  const q = effects.reduce((sum, { effect, variance }) => sum + (effect - fixed) ** 2 / variance, 0);
  const scale = w - w2 / w;
  const moments = Math.max(0, (q - (k - 1)) / scale);
  const typicalVariance = (k - 1) / scale;
  if (method === "dersimonian-laird") return { tauSquared: moments, q, typicalVariance };
  return { tauSquared: restrictedLikelihood(effects), q, typicalVariance };
}

/** Maximum of the restricted likelihood on tau^2 >= 0 by Fisher scoring from the data's own variance. */
function restrictedLikelihood(effects: readonly StudyEffect[]): number {
  const mean = effects.reduce((sum, { effect }) => sum + effect, 0) / effects.length;
  const spread = effects.reduce((sum, { effect }) => sum + (effect - mean) ** 2, 0) / (effects.length - 1);
  if (spread === 0) return 0;
  let tauSquared = Math.max(
    0,
    spread - effects.reduce((sum, { variance }) => sum + variance, 0) / effects.length,
  );
  // A step past 0 stays at 0; a score below 0 there ends it.
  for (let iteration = 0; iteration < 500; iteration++) {
    const { score, information } = restrictedScore(effects, tauSquared);
    const step = score / information;
    const next = Math.max(0, tauSquared + step);
    if (Math.abs(next - tauSquared) <= 1e-14 * (1e-6 * spread + next)) return next;
    tauSquared = next;
  }
  return tauSquared;
}

/** Score and expected information of the restricted log-likelihood in tau^2. @source viechtbauer2005 */
function restrictedScore(
  effects: readonly StudyEffect[],
  tauSquared: number,
): { score: number; information: number } {
  let [w, w2, w3, we] = [0, 0, 0, 0];
  for (const { effect, variance } of effects) {
    const weight = 1 / (variance + tauSquared);
    w += weight;
    w2 += weight ** 2;
    w3 += weight ** 3;
    we += weight * effect;
  }
  const mean = we / w;
  let squares = 0;
  for (const { effect, variance } of effects) squares += (effect - mean) ** 2 / (variance + tauSquared) ** 2;
  return { score: (squares - w + w2 / w) / 2, information: (w2 - (2 * w3) / w + (w2 / w) ** 2) / 2 };
}
