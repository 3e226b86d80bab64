/**
 * P(Z <= z) of the standard normal distribution, relative error below 1e-14 in both tails.
 *
 * Rational approximation of Hart, algorithm 5666, in the double-precision form given by West.
 *
 * @source hart1968
 * @source west2005
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { normalCumulative } from "@steelyard/core/body";
 *
 * assert.ok(Math.abs(normalCumulative(1.959964) - 0.975) < 1e-7);
 * ```
 */
export function normalCumulative(z: number): number {
  if (Number.isNaN(z))
    throw new RangeError(`Cannot compute a normal probability as z must be a number: current value is ${z}`);
  const y = Math.abs(z);
  if (y > 37) return z > 0 ? 1 : 0;
  const e = Math.exp((-y * y) / 2);
  let tail: number;
  if (y < 7.071_067_811_865_47) {
    let top = 3.526_249_659_989_11e-2 * y + 0.700_383_064_443_688;
    top = top * y + 6.373_962_203_531_65;
    top = top * y + 33.912_866_078_383;
    top = top * y + 112.079_291_497_871;
    top = top * y + 221.213_596_169_931;
    top = top * y + 220.206_867_912_376;
    let bottom = 8.838_834_764_831_84e-2 * y + 1.755_667_163_182_64;
    bottom = bottom * y + 16.064_177_579_207;
    bottom = bottom * y + 86.780_732_202_946_1;
    bottom = bottom * y + 296.564_248_779_674;
    bottom = bottom * y + 637.333_633_378_831;
    bottom = bottom * y + 793.826_512_519_948;
    bottom = bottom * y + 440.413_735_824_752;
    tail = (e * top) / bottom;
  } else {
    let fraction = y + 0.65;
    fraction = y + 4 / fraction;
    fraction = y + 3 / fraction;
    fraction = y + 2 / fraction;
    fraction = y + 1 / fraction;
    tail = e / fraction / Math.sqrt(2 * Math.PI);
  }
  return z > 0 ? 1 - tail : tail;
}
