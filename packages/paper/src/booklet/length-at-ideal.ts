import { idealWeight } from "@steelyard/core/body";
import { type Centimetres, centimetres } from "@steelyard/core/units";

/** The lying length, to the centimetre, whose ideal weight (sex unknown) is nearest to a weight. */
export function lengthAtIdeal(kg: number): Centimetres {
  let best = 45;
  let least = Number.POSITIVE_INFINITY;
  for (let cm = 45; cm <= 205; cm += 1) {
    const ideal = idealWeight({ lengthCm: centimetres(cm) });
    if (!ideal.ok) continue;
    const off = Math.abs(ideal.value - kg);
    if (off < least) {
      least = off;
      best = cm;
    }
  }
  return centimetres(best);
}
