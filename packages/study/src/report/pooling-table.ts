import { formatNumber } from "@steelyard/core/units";
import type { StudyAnalysis } from "../analysis/index.ts";
import { methodId } from "../methods/index.ts";
import { type PooledFigure, poolSites, type SiteSummary, summariseSite } from "../pooling/index.ts";
import { selectRows, wordAt } from "../table/index.ts";
import type { ReportTable } from "./block.ts";
import { tenth } from "./english-words.ts";

/** What every site of a table would hand over; empty where the table names fewer than three. */
export function siteSummaries({ table, methods }: StudyAnalysis): readonly SiteSummary[] {
  const sites = table.words.get("site");
  if (sites === undefined || sites.levels.length < 3 || sites.levels.length > 200) return [];
  const withEstimates = {
    ...table,
    numbers: new Map([
      ...table.numbers,
      ...methods.map(({ estimates }) => [methodId(estimates.method), estimates.estimateKg] as const),
    ]),
  };
  return sites.levels.map((site) => {
    const own = selectRows(withEstimates, (row) => wordAt(sites, row) === site);
    const trueKg = own.numbers.get("weightKg") as Float64Array;
    return summariseSite({
      site,
      trueKg,
      methods: methods.map(({ estimates }) => ({
        method: methodId(estimates.method),
        estimateKg: own.numbers.get(methodId(estimates.method)) as Float64Array,
      })),
    });
  });
}

/**
 * Random-effects pooling over sites: the same whether from rows or from the sites' summary files.
 *
 * ```ts
 * import assert from "node:assert/strict";
 * import { poolingTable } from "@steelyard/study/report";
 *
 * assert.equal(poolingTable([]), undefined);
 * ```
 */
export function poolingTable(summaries: readonly SiteSummary[]): ReportTable | undefined {
  if (summaries.length < 3) return undefined;
  const pooled = poolSites(summaries).flatMap(
    ({ method, children, meanErrorPercent, within10Percent, within20Percent }) => [
      { method, children, what: "mean error, %", figure: meanErrorPercent },
      { method, children, what: "within 10 %", figure: within10Percent },
      { method, children, what: "within 20 %", figure: within20Percent },
    ],
  );
  return {
    name: "pooled",
    caption: `${formatNumber(summaries.length)} sites pooled: random effects by REML (shares as logits), with the range in which another site's figure would lie`,
    head: ["", "Figure", "Sites", "Children", "Pooled (95 % interval)", "Another site", "I², %"],
    rows: pooled.map(({ method, children, what, figure }) => [
      method,
      what,
      formatNumber(figure.sites.length),
      formatNumber(children),
      rangeText(figure.pooled),
      figure.prediction === undefined
        ? ""
        : `${tenth(figure.prediction.low)} to ${tenth(figure.prediction.high)}`,
      tenth(figure.effect.iSquaredPercent),
    ]),
    data: {
      columns: [
        "method",
        "figure",
        "sites",
        "children",
        "pooled",
        "low",
        "high",
        "prediction_low",
        "prediction_high",
        "tau_squared",
        "i_squared_percent",
      ],
      rows: pooled.map(({ method, children, what, figure }) => [
        method,
        what,
        figure.sites.length,
        children,
        ...[figure.pooled.value, figure.pooled.low, figure.pooled.high],
        figure.prediction?.low ?? "",
        figure.prediction?.high ?? "",
        figure.effect.tauSquared,
        figure.effect.iSquaredPercent,
      ]),
    },
  };
}

function rangeText({ value, low, high }: PooledFigure["pooled"]): string {
  return `${tenth(value)} (${tenth(low)} to ${tenth(high)})`;
}
