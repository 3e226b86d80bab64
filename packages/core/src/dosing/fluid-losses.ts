import { withoutDrift } from "../units/without-drift.ts";

/**
 * The fluid a dehydrated child has lost, mL: percent of body weight x kg x 10.
 *
 * kg above 0; `lostPercent` of body weight, 0 to 20. Throws a `RangeError` outside that.
 *
 * @source who-pocket-book-2013
 *
 * ```ts
 * import { fluidDeficitMl } from "@steelyard/core/dosing";
 * import assert from "node:assert/strict";
 * assert.equal(fluidDeficitMl({ kg: 12, lostPercent: 5 }), 600);
 * ```
 */
export function fluidDeficitMl({
  kg,
  lostPercent,
}: {
  readonly kg: number;
  readonly lostPercent: number;
}): number {
  within({ name: "kg", value: kg, low: 0, high: 1000 });
  within({ name: "lostPercent", value: lostPercent, low: 0, high: 20 });
  return withoutDrift(kg * lostPercent * 10);
}

/**
 * Fluid for a burn, mL: so many mL per kg and percent of burned body surface in the 24 h after the injury, half of it in
 * the first 8 h. Maintenance comes on top.
 *
 * kg above 0; `burnedPercent` of the body surface, 0 to 100; `mlPerKgPerPercent` 2 to 4 by the local protocol. Throws a
 * `RangeError` outside that.
 *
 * @source burns-parkland-1968
 *
 * ```ts
 * import { burnFluidMl } from "@steelyard/core/dosing";
 * import assert from "node:assert/strict";
 * const fluid = burnFluidMl({ kg: 20, burnedPercent: 15, mlPerKgPerPercent: 3 });
 * assert.deepEqual(fluid, { first24hMl: 900, first8hMl: 450 });
 * ```
 */
export function burnFluidMl({
  kg,
  burnedPercent,
  mlPerKgPerPercent,
}: {
  readonly kg: number;
  readonly burnedPercent: number;
  readonly mlPerKgPerPercent: number;
}): { readonly first24hMl: number; readonly first8hMl: number } {
  within({ name: "kg", value: kg, low: 0, high: 1000 });
  within({ name: "burnedPercent", value: burnedPercent, low: 0, high: 100 });
  within({ name: "mlPerKgPerPercent", value: mlPerKgPerPercent, low: 2, high: 4 });
  const first24hMl = withoutDrift(kg * burnedPercent * mlPerKgPerPercent);
  return { first24hMl, first8hMl: withoutDrift(first24hMl / 2) };
}

function within({
  name,
  value,
  low,
  high,
}: {
  readonly name: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}): void {
  if (value >= low && value <= high && value > (name === "kg" ? 0 : -1)) return;
  throw new RangeError(
    `Cannot compute a fluid as ${name} must be in [${low}, ${high}]: current value is ${value}`,
  );
}
