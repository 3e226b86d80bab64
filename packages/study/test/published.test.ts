import { describe, expect, it } from "vitest";
import { limitsOfAgreement } from "../src/accuracy/index.ts";
import { intraclassCorrelations, repeatedLimits, weightedKappa } from "../src/agreement/index.ts";
import { wilsonInterval } from "../src/analysis/wilson-interval.ts";
import { pairedDifference } from "../src/comparison/index.ts";
import { poolEffects } from "../src/pooling/index.ts";
import { limitHalfWidth } from "../src/sample-size/index.ts";
import readings from "./printed-data.json" with { type: "json" };
import rows from "./published/statistics.json" with { type: "json" };

// Peak expiratory flow, l/min, first readings by a large and a small meter. @source bland-altman-1986
const large = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
const small = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];
const flow = limitsOfAgreement(
  large.map((value, i) => value - (small[i] as number)),
  { multiplier: 2 },
);
const usual = limitsOfAgreement(large.map((value, i) => value - (small[i] as number)));

// Six targets by four judges. @source shrout-fleiss-1979
const icc = intraclassCorrelations([
  [9, 2, 5, 8],
  [6, 1, 3, 2],
  [8, 4, 6, 8],
  [7, 1, 2, 6],
  [10, 5, 6, 9],
  [6, 2, 4, 7],
]);
// @source cohen1960
const kappa = weightedKappa(
  [
    [88, 14, 18],
    [10, 40, 10],
    [2, 6, 12],
  ],
  "none",
);
const paired = pairedDifference({ both: 36, onlyFirst: 12, onlySecond: 2, neither: 0 });

const airway = pairedDifference({ both: 1, onlyFirst: 1, onlySecond: 7, neither: 12 });
const pairedOf = (both: number, onlyFirst: number, onlySecond: number, neither: number) =>
  pairedDifference({ both, onlyFirst, onlySecond, neither });
// @source bland-altman-1999
const cardiac = repeatedLimits(readings.cardiacOutput, "constant").withinSd as {
  first: number;
  second: number;
};
// @source colditz1994
const trials = readings.bcg.map(({ vaccinated: [a, b], others: [c, d] }) => {
  const [treated, control] = [(a as number) + (b as number), (c as number) + (d as number)];
  return {
    effect: Math.log((a as number) / treated / ((c as number) / control)),
    variance: 1 / (a as number) - 1 / treated + 1 / (c as number) - 1 / control,
  };
});
const pooledBy = (between: "reml" | "dersimonian-laird", name: string): Record<string, number> => {
  const own = poolEffects(trials, { between, hartungKnapp: false });
  return {
    [`bcg ${name} estimate`]: own.pooled.value,
    [`bcg ${name} low`]: own.pooled.low,
    [`bcg ${name} high`]: own.pooled.high,
    [`bcg ${name} standard error`]: own.standardError,
    [`bcg ${name} tau squared`]: own.tauSquared,
    [`bcg ${name} I squared`]: own.iSquaredPercent,
    [`bcg ${name} Q`]: own.q,
  };
};

/** The paper's rough SE of a limit, sqrt(3 s^2 / n), with t of 16 degrees of freedom, 2.12. */
const rough = 2.12 * flow.sd.value * Math.sqrt(3 / 17);

const figures: Readonly<Record<string, number>> = {
  "peak-flow bias": flow.bias.value,
  "peak-flow sd": flow.sd.value,
  "peak-flow lower 2 sd": flow.lower.value,
  "peak-flow upper 2 sd": flow.upper.value,
  "peak-flow bias low": flow.bias.low,
  "peak-flow bias high": flow.bias.high,
  "peak-flow lower limit low": flow.lower.value - rough,
  "peak-flow lower limit high": flow.lower.value + rough,
  "peak-flow upper limit low": flow.upper.value - rough,
  "peak-flow upper limit high": flow.upper.value + rough,
  "icc 1,1": icc.oneWay.single.value,
  "icc 2,1": icc.twoWayRandom.single.value,
  "icc 3,1": icc.twoWayFixed.single.value,
  "icc 1,k": icc.oneWay.mean.value,
  "icc 2,k": icc.twoWayRandom.mean.value,
  "icc 3,k": icc.twoWayFixed.mean.value,
  "mean square between": icc.meanSquares.betweenChildren,
  "mean square within": icc.meanSquares.withinChildren,
  "mean square judges": icc.meanSquares.betweenReaders,
  "mean square residual": icc.meanSquares.residual,
  "kappa observed": kappa.observed,
  "kappa expected": kappa.expected,
  kappa: kappa.kappa,
  "wilson 81/263 low": wilsonInterval(81, 263).low,
  "wilson 81/263 high": wilsonInterval(81, 263).high,
  "wilson 70/100 low": wilsonInterval(70, 100).low,
  "wilson 70/100 high": wilsonInterval(70, 100).high,
  "wilson 700/1000 low": wilsonInterval(700, 1000).low,
  "wilson 700/1000 high": wilsonInterval(700, 1000).high,
  "paired 36, 12, 2, 0 low": paired.low,
  "paired 36, 12, 2, 0 high": paired.high,
  "paired 20, 12, 2, 16 low": pairedOf(20, 12, 2, 16).low,
  "paired 20, 12, 2, 16 high": pairedOf(20, 12, 2, 16).high,
  "paired 36, 14, 0, 0 low": pairedOf(36, 14, 0, 0).low,
  "paired 36, 14, 0, 0 high": pairedOf(36, 14, 0, 0).high,
  "paired 50, 0, 0, 0 high": pairedOf(50, 0, 0, 0).high,
  "airway low": airway.low,
  "airway high": airway.high,
  "cardiac output within variance, first": cardiac.first ** 2,
  "cardiac output within variance, second": cardiac.second ** 2,
  ...pooledBy("reml", "reml"),
  ...pooledBy("dersimonian-laird", "dl"),
  "half-width 50": limitHalfWidth(50, "rough"),
  "half-width 100": limitHalfWidth(100, "rough"),
  "half-width 200": limitHalfWidth(200, "rough"),
};

describe("published examples", () => {
  it.each(rows)("$id: $figure is $expected ($source, $at)", ({ figure, expected, ...row }) => {
    const tolerance =
      "tolerance" in row ? row.tolerance : 0.5 * 10 ** -(row.printedDecimals as number) + 1e-12;
    expect(Math.abs((figures[figure] as number) - expected)).toBeLessThanOrEqual(tolerance as number);
  });

  it("1.96 SD in place of 2 gives the narrower limits, -78.1 and 73.9", () => {
    expect(usual.lower.value).toBeCloseTo(-78.1, 1);
    expect(usual.upper.value).toBeCloseTo(73.9, 1);
  });
});
