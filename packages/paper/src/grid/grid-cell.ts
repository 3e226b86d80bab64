import { estimateWeight, type Measurements, type SiteProfile } from "@steelyard/core/body";
import { formatNumber, type NumberStyle } from "@steelyard/core/units";

/** What a cell of the grid says; nothing where no such child is to be expected. */
export interface GridCell {
  readonly kg?: number;
  /** Beyond what the fit has seen. */
  readonly isBeyond: boolean;
}

/** As far beyond the fit as the chart of the strip goes. */
const farBelow = 0.88;
const farAbove = 1.04;

/** The total weight for what was measured, and whether to print it grey or not at all. */
export function gridCell(measurements: Measurements, options: { readonly site?: SiteProfile }): GridCell {
  const estimate = estimateWeight(measurements, options);
  if (!estimate.ok) return { isBeyond: true };
  const { warnings, totalKg } = estimate.value;
  const beyond = warnings.filter((warning) => warning.type === "measurement-extrapolated");
  const isBeyond = beyond.length > 0;
  const isFar = beyond.some(
    ({ measurement, value, low, high }) =>
      measurement !== "lengthCm" && (value < low * farBelow || value > high * farAbove),
  );
  const contradicts = warnings.some(({ type }) => type === "measurement-conflict");
  return contradicts || isFar ? { isBeyond: true } : { kg: totalKg, isBeyond };
}

/** To three digits at most: 0.1 kg under 20 kg, whole kilograms from there. */
export function writeCell(kg: number, style: NumberStyle): string {
  return formatNumber(kg < 20 ? Math.round(kg * 10) / 10 : Math.round(kg), style);
}
