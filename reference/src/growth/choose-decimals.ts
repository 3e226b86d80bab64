import type { PrintedRow } from "./read-lms-file.ts";

export interface Decimals {
  readonly L: number;
  readonly M: number;
  readonly S: number;
}

/** Room left under 0.0005 z for what linear interpolation between two rounded rows may add. */
const toleranceZ = 0.00045;
const heights = [-4, -3, -2, -1, 0, 1, 2, 3, 4];

/** The decimals the figures were printed with. */
function printedDecimals(rows: readonly PrintedRow[]): Decimals {
  const most = (name: "L" | "M" | "S") =>
    Math.max(...rows.map((row) => (row[name].split(".")[1] ?? "").replace(/0+$/, "").length));
  return { L: most("L"), M: most("M"), S: most("S") };
}

/**
 * The printed decimals when they are five or fewer; else the fewest that leave the z-score of every value
 * between -4 and 4 SD within 0.00045 of that from the printed figures. Of choices with as many digits, that
 * with the smallest error.
 */
export function chooseDecimals(rows: readonly PrintedRow[]): Decimals {
  const printed = printedDecimals(rows);
  if (Math.max(printed.L, printed.M, printed.S) <= 5) return printed;
  for (let digits = 6; digits < 30; digits++) {
    let best: { decimals: Decimals; error: number } | undefined;
    for (let L = 1; L <= Math.min(9, digits - 2); L++) {
      for (let M = 1; M <= Math.min(9, digits - L - 1); M++) {
        const decimals = { L, M, S: digits - L - M };
        const error = worstError(rows, decimals, best?.error ?? toleranceZ);
        if (error <= (best?.error ?? toleranceZ)) best = { decimals, error };
      }
    }
    if (best) return best.decimals;
  }
  return printed;
}

function worstError(rows: readonly PrintedRow[], decimals: Decimals, giveUpAt: number): number {
  let worst = 0;
  for (const row of rows) {
    const [l, m, s] = [Number(row.L), Number(row.M), Number(row.S)];
    const [rl, rm, rs] = [rounded(l, decimals.L), rounded(m, decimals.M), rounded(s, decimals.S)];
    for (const z of heights) {
      const inside = 1 + l * s * z;
      if (inside <= 0) continue;
      const value = m * inside ** (1 / l);
      const error = Math.abs(((value / rm) ** rl - 1) / (rl * rs) - z);
      if (!(error <= giveUpAt)) return Number.POSITIVE_INFINITY;
      worst = Math.max(worst, error);
    }
  }
  return worst;
}

function rounded(value: number, decimals: number): number {
  return Math.round(value * 10 ** decimals) / 10 ** decimals;
}
