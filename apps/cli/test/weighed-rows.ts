import { estimateWeight } from "@steelyard/core/body";
import { centimetres, millimetres } from "@steelyard/core/units";

export const HEADER = "ward,lying_length_cm,arm_mm,sex,weight_kg,date";

/** Rows of invented children of a site, who weigh `factor` times what an uncalibrated estimate says, some more and some less. */
export function weighedRows({ count, factor }: { count: number; factor: number }): string[] {
  return Array.from({ length: count }, (_, i) => {
    const length = 60 + ((i * 7919) % 1100) / 10;
    const arm = Math.round((105 + 1.1 * (length - 50)) * (0.88 + 0.003 * ((i * 104_729) % 100)));
    const sex = i % 2 === 0 ? "f" : "m";
    const estimate = estimateWeight({ lengthCm: centimetres(length), armMm: millimetres(arm), sex });
    if (!estimate.ok) throw new Error(`Cannot make row ${i}: ${estimate.error.type}`);
    const spread = 1 + 0.001 * (((i * 15_485_863) % 101) - 50);
    const weight = (estimate.value.totalKg * factor * spread).toFixed(2);
    return `Larch,${length},${arm},${sex},${weight},2026-0${1 + (i % 6)}-1${i % 10}`;
  });
}

/** The rows as a CSV file. */
export function weighedFile(given: { count: number; factor: number }): string {
  return `${[HEADER, ...weighedRows(given)].join("\n")}\n`;
}
