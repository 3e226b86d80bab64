import { expect, it } from "vitest";
import { summariseErrors } from "./error-summary.ts";
import { wilsonInterval } from "./wilson-interval.ts";

// Peak flow by two meters, first readings: Bland and Altman 1986 (from memory of the paper).
const wright = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
const mini = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];

it("gives the limits of agreement of the peak-flow meters and their intervals", () => {
  const summary = summariseErrors({ estimateKg: Float64Array.from(wright), trueKg: Float64Array.from(mini) });
  expect(summary?.kg.bias.value).toBeCloseTo(-2.1, 1);
  expect(summary?.kg.sd).toBeCloseTo(38.8, 1);
  expect(summary?.kg.lower.value).toBeCloseTo(-78.1, 1);
  expect(summary?.kg.upper.value).toBeCloseTo(73.9, 1);
  expect(summary?.kg.bias.low).toBeCloseTo(-22.0, 1);
  expect(summary?.kg.bias.high).toBeCloseTo(17.8, 1);
});

it("gives Wilson's interval as printed by Newcombe 1998", () => {
  const { share, low, high } = wilsonInterval(81, 263);
  expect([share, low, high].map((value) => value.toFixed(4))).toEqual(["0.3080", "0.2553", "0.3662"]);
});

it("counts a boundary as within", () => {
  const summary = summariseErrors({
    estimateKg: Float64Array.of(11, 12, 13, 14),
    trueKg: Float64Array.of(10, 10, 10, 10),
  });
  expect([
    summary?.within10.count,
    summary?.within20.count,
    summary?.within30.count,
    summary?.over20.count,
  ]).toEqual([1, 2, 3, 2]);
  expect(summary?.medianPercent).toBeCloseTo(25, 9);
});
