import { formatNumber } from "@steelyard/core/units";
import { language } from "../../messages/language.ts";

/** "+4.2 %" with the sign said: an error, to a tenth. */
export function writeError(percent: number): string {
  const tenths = Math.round(percent * 10) / 10;
  return `${tenths > 0 ? "+" : ""}${formatNumber(tenths, language?.numbers)}\u00a0%`;
}

/** "82.5 %": a share. */
export function writeShare(percent: number): string {
  return `${formatNumber(Math.round(percent * 10) / 10, language?.numbers)}\u00a0%`;
}
