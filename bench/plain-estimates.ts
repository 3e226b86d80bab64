import { defaultBodyModel, studentQuantile, uncalibratedSite } from "@steelyard/core/body";
import type { InventedChild } from "./invented-child.ts";

const straightFrom = 0.25;

/** Totals and ends of the 95 % interval, kg, one after the other for each child. */
export type PlainEstimates = (children: readonly InventedChild[]) => Float64Array;

/**
 * The sums of `estimateWeight` for length, arm and a girl, written out as one loop over arrays with nothing around them: no validation, no
 * warnings, no objects. The peer that says what the estimator's manners cost.
 */
export function plainEstimates(): PlainEstimates {
  const { index, residual, at } = defaultBodyModel().byLength;
  const points = Math.round((index.high - index.low) / index.step) + 1;
  const rows = Array.from({ length: points }, (_, i) => at("f", index.low + i * index.step));
  const column = (value: (row: (typeof rows)[number]) => number): Float64Array =>
    Float64Array.from(rows, value);
  const [wm, ws, wl, am, as, al] = (["weight", "arm"] as const).flatMap((quantity) => [
    column((row) => row.curve(quantity).logMedian),
    column((row) => row.curve(quantity).sigma),
    column((row) => row.curve(quantity).lambda),
  ]) as [Float64Array, Float64Array, Float64Array, Float64Array, Float64Array, Float64Array];
  const rho = column((row) => row.correlation("weight", "arm"));
  const { variance: between, spread: own } = uncalibratedSite.population;
  const t975 = studentQuantile({ probability: 0.975, df: residual.tailDf });
  const read = (own: Float64Array, row: number, part: number): number =>
    (own[row] as number) + part * ((own[row + 1] as number) - (own[row] as number));
  const kgOf = (z: number, m: number, s: number, l: number): number => {
    const power = 1 + l * s * z;
    if (power >= straightFrom) return Math.exp(m + Math.log(power) / l);
    return Math.exp(m + Math.log(straightFrom) / l + ((z - (straightFrom - 1) / (l * s)) * s) / straightFrom);
  };
  return (children) => {
    const out = new Float64Array(children.length * 3);
    for (let i = 0; i < children.length; i++) {
      const { lengthCm, armMm } = children[i] as InventedChild;
      const position = (lengthCm - index.low) / index.step;
      const row = Math.min(Math.floor(position), points - 2);
      const part = position - row;
      const [m, s, l] = [read(wm, row, part), read(ws, row, part), read(wl, row, part)];
      const [ma, sa, la] = [read(am, row, part), read(as, row, part), read(al, row, part)];
      const r = read(rho, row, part);
      const power = Math.exp(la * (Math.log(armMm) - ma));
      const z =
        power >= straightFrom
          ? (power - 1) / (la * sa)
          : (straightFrom - 1) / (la * sa) +
            ((Math.log(armMm) - ma - Math.log(straightFrom) / la) * straightFrom) / sa;
      const expected = r * z;
      const left = 1 - r * r;
      const slope = Math.max(1 + l * s * expected, straightFrom);
      const bent = expected + left * (1 - left) * at("f", lengthCm).bend(expected);
      const spread =
        Math.sqrt(left) *
        residual.scale *
        slope ** residual.spreadPower *
        Math.sqrt(own ** 2 + between.shift + between.slope * bent * bent);
      out[3 * i] = kgOf(bent, m, s, l);
      out[3 * i + 1] = kgOf(bent - t975 * spread, m, s, l);
      out[3 * i + 2] = kgOf(bent + t975 * spread, m, s, l);
    }
    return out;
  };
}
