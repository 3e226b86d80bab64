import type { Calibration, CalibrationAgreement } from "@steelyard/core/body";
import { formatNumber } from "@steelyard/core/units";
import { wrap } from "../wrap.ts";

/** Less than this many estimates in a hundred, one way or the other, is no difference. */
const noDifference = 1;

/** What a calibration changes, whether it helps and how many more children it needs, for a screen of 80 columns. */
export function formatCalibration(calibration: Calibration): string {
  return `${[table(calibration), "", ...verdict(calibration).map((sentence) => wrap(sentence))].join("\n")}\n`;
}

function table({ before, after }: Calibration): string {
  const row = (name: string, read: (agreement: CalibrationAgreement) => string): string =>
    `${name.padEnd(38)}${read(before).padStart(10)}${read(after).padStart(10)}`;
  return [
    `${"".padEnd(38)}${"before".padStart(10)}${"after".padStart(10)}`,
    row("mean error of the estimate", ({ meanError }) => `${signed(meanError)} %`),
    row("estimates within 10 % of the scale", ({ within10 }) => `${tenth(within10)} %`),
    row("estimates within 20 % of the scale", ({ within20 }) => `${tenth(within20)} %`),
    row("scale weights within the 95 % range", ({ coverage }) => `${tenth(coverage)} %`),
  ].join("\n");
}

function verdict({
  before,
  after,
  children,
  shiftWithinPercent,
  childrenForOnePercent,
}: Calibration): string[] {
  const gain = after.within10 - before.within10;
  const helps =
    gain >= noDifference
      ? `It helps: ${tenth(gain)} more of 100 estimates come within 10 % of the scale.`
      : gain > -noDifference
        ? "It changes little: these children are much like those of the body model."
        : `It does not help: ${tenth(-gain)} fewer of 100 estimates come within 10 % of the scale. Look at the rows before anybody uses it.`;
  // The second counts the rows that were given little weight, and the slope that was learnt beside the shift.
  const more = Math.max(childrenForOnePercent, Math.ceil(children * shiftWithinPercent ** 2)) - children;
  const needed =
    shiftWithinPercent > 1 && more > 0
      ? `About ${count(more)} more would make that 1 %: measure and weigh on, then calibrate again.`
      : "More are not needed.";
  return [
    `${helps} "After" is judged on the same children the calibration was made from, so it flatters a little.`,
    `With ${count(children)} children the shift is known within ${tenth(shiftWithinPercent)} % of weight. ${needed}`,
    "Nobody has signed this profile: a licensed professional of the site looks at these numbers before it is used.",
  ];
}

function tenth(value: number): string {
  return formatNumber(Math.round(value * 10) / 10);
}

function signed(value: number): string {
  return `${value >= 0.05 ? "+" : ""}${tenth(value)}`;
}

function count(value: number): string {
  return value.toLocaleString("en-GB");
}
