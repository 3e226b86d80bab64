import type { BodyModel } from "@steelyard/core/body";

/** The range of arms at one length, mm. */
interface ArmRange {
  readonly lowMm: number;
  readonly highMm: number;
}

/**
 * Where an arm stands across the chart: 0 at the left edge, 1 at the right, straight in the logarithm of the arm between the
 * edges of that length, so that a per cent of arm is as wide on the left as on the right. The edges follow the arms that
 * children of each length have, smoothly; lines of equal arm run gently across the page.
 */
export interface ArmAxis {
  across(at: { readonly lengthCm: number; readonly armMm: number }): number;
  armMm(at: { readonly lengthCm: number; readonly across: number }): number;
  /** The arms that 998 of 1,000 children of either sex have at this length: outside them the model extrapolates. */
  fitted(lengthCm: number): ArmRange;
}

/** How far beyond the fitted range the chart goes, tinted: the model gives a weight there and says that it extrapolates. */
const below = 0.88;
const above = 1.04;
/** No arm in the data of the fit is thicker; the curves of the very tall run on past it. */
const thickestMm = 500;
/** Few, so that the edges are smooth; they bend where growth does. */
const knotsCm = [45, 55, 70, 90, 115, 140, 170, 200];

export function createArmAxis({ byLength }: BodyModel): ArmAxis {
  const fitted = (lengthCm: number): ArmRange => {
    const sexes = (["m", "f"] as const).map((sex) => byLength.at(sex, lengthCm).fitted("arm"));
    return {
      lowMm: Math.min(...sexes.map(({ low }) => low)),
      highMm: Math.min(Math.max(...sexes.map(({ high }) => high)), thickestMm),
    };
  };
  const logs = knotsCm.map((lengthCm) => {
    const { lowMm, highMm } = fitted(lengthCm);
    return { low: Math.log(lowMm * below), high: Math.log(highMm * above) };
  });
  const lowLog = smoothThrough(
    knotsCm,
    logs.map(({ low }) => low),
  );
  const highLog = smoothThrough(
    knotsCm,
    logs.map(({ high }) => high),
  );
  return {
    fitted,
    across({ lengthCm, armMm }) {
      const low = lowLog(lengthCm);
      return (Math.log(armMm) - low) / (highLog(lengthCm) - low);
    },
    armMm({ lengthCm, across }) {
      const low = lowLog(lengthCm);
      return Math.exp(low + across * (highLog(lengthCm) - low));
    },
  };
}

/** The natural cubic spline through points: twice continuously differentiable, straight beyond its ends. */
function smoothThrough(xs: readonly number[], ys: readonly number[]): (x: number) => number {
  const n = xs.length;
  const h = (i: number): number => (xs[i + 1] as number) - (xs[i] as number);
  const slope = (i: number): number => ((ys[i + 1] as number) - (ys[i] as number)) / h(i);
  // Second derivatives by the tridiagonal system, forwards then backwards.
  const second = new Array<number>(n).fill(0);
  const upper = new Array<number>(n).fill(0);
  for (let i = 1; i < n - 1; i += 1) {
    const diagonal = 2 * (h(i - 1) + h(i)) - h(i - 1) * (upper[i - 1] as number);
    upper[i] = h(i) / diagonal;
    second[i] = (6 * (slope(i) - slope(i - 1)) - h(i - 1) * (second[i - 1] as number)) / diagonal;
  }
  for (let i = n - 2; i > 0; i -= 1)
    second[i] = (second[i] as number) - (upper[i] as number) * (second[i + 1] as number);
  return (x) => {
    let i = 0;
    while (i < n - 2 && x > (xs[i + 1] as number)) i += 1;
    const from = xs[i] as number;
    const width = h(i);
    const t = Math.min(Math.max((x - from) / width, 0), 1);
    const [a, b] = [ys[i] as number, ys[i + 1] as number];
    const [sa, sb] = [second[i] as number, second[i + 1] as number];
    return a * (1 - t) + b * t + (width ** 2 / 6) * (((1 - t) ** 3 - (1 - t)) * sa + (t ** 3 - t) * sb);
  };
}
