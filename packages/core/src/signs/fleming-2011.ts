import type { Band } from "../lookup/index.ts";
import type { Centile } from "./sign-line.ts";

const CENTILES = [1, 10, 25, 50, 75, 90, 99] as const;

type Row = readonly [number, number, number, number, number, number, number];

/** The row "birth" of the heart rates is taken as the first day. */
const FIRST_DAY_MONTHS = 12 / 365.25;

/** Where the tables end, months. */
export const FLEMING_HIGH_MONTHS = 216;

/**
 * Heart rate, beats a minute, by age in months: 1st, 10th, 25th, 50th, 75th, 90th, 99th centile.
 *
 * @source fleming2011, web table of heart rate centiles (from memory)
 */
export const heartRates: readonly Band<readonly Centile[]>[] = bands([
  [0, [90, 107, 116, 127, 138, 148, 164]],
  [FIRST_DAY_MONTHS, [107, 123, 133, 143, 154, 164, 181]],
  [3, [104, 120, 129, 140, 150, 159, 175]],
  [6, [98, 114, 123, 134, 143, 152, 168]],
  [9, [93, 109, 118, 128, 137, 145, 161]],
  [12, [88, 103, 112, 123, 132, 140, 156]],
  [18, [82, 98, 106, 116, 126, 135, 149]],
  [24, [76, 92, 100, 110, 119, 128, 142]],
  [36, [70, 86, 94, 104, 113, 123, 136]],
  [48, [65, 81, 89, 98, 108, 117, 131]],
  [72, [59, 74, 82, 91, 101, 111, 123]],
  [96, [52, 67, 75, 84, 93, 103, 115]],
  [144, [47, 62, 69, 78, 87, 96, 108]],
  [180, [43, 58, 65, 73, 83, 92, 104]],
]);

/**
 * Respiratory rate, breaths a minute, by age in months: the same centiles.
 *
 * @source fleming2011, web table of respiratory rate centiles (from memory)
 */
export const respiratoryRates: readonly Band<readonly Centile[]>[] = bands([
  [0, [25, 34, 40, 43, 50, 57, 66]],
  [3, [24, 33, 38, 41, 47, 55, 64]],
  [6, [23, 31, 36, 39, 45, 52, 61]],
  [9, [22, 30, 35, 37, 42, 50, 58]],
  [12, [21, 28, 32, 35, 40, 46, 53]],
  [18, [19, 25, 29, 31, 36, 40, 46]],
  [24, [18, 22, 25, 28, 31, 34, 38]],
  [36, [17, 21, 23, 25, 27, 29, 33]],
  [48, [17, 20, 21, 23, 25, 27, 29]],
  [72, [16, 18, 20, 21, 23, 24, 27]],
  [96, [14, 16, 18, 19, 21, 22, 25]],
  [144, [12, 15, 16, 18, 19, 21, 23]],
  [180, [11, 13, 15, 16, 18, 19, 22]],
]);

function bands(rows: readonly (readonly [low: number, values: Row])[]): Band<readonly Centile[]>[] {
  return rows.map(([low, values], row) => ({
    low,
    high: rows[row + 1]?.[0] ?? FLEMING_HIGH_MONTHS,
    value: CENTILES.map((centile, i) => ({ centile, value: values[i] as number })),
  }));
}
