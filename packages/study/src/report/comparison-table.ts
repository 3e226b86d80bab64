import { formatNumber } from "@steelyard/core/units";
import type { StudyAnalysis } from "../analysis/index.ts";
import {
  adjustPValues,
  comparePairedErrors,
  countPairs,
  mcnemar,
  pairedDifference,
} from "../comparison/index.ts";
import { methodId } from "../methods/index.ts";
import type { ReportTable } from "./block.ts";
import { tenth } from "./english-words.ts";
import type { ReportWords } from "./report-words.ts";

/** Every further method against the first, pair by pair on the children that all of them serve; undefined with fewer than two or too few children. */
export function comparisonTable(
  { table, methods, common }: StudyAnalysis,
  words: ReportWords,
): ReportTable | undefined {
  const [first, ...others] = methods;
  if (first === undefined || others.length === 0 || common.children < 10) return undefined;
  const weights = table.numbers.get("weightKg") as Float64Array;
  const rows: number[] = [];
  for (let row = 0; row < table.rows; row++)
    if (
      !Number.isNaN(weights[row] as number) &&
      methods.every(({ estimates }) => !Number.isNaN(estimates.estimateKg[row] as number))
    )
      rows.push(row);
  const pick = (values: Float64Array): Float64Array =>
    Float64Array.from(rows, (row) => values[row] as number);
  const trueKg = pick(weights);
  const firstKg = pick(first.estimates.estimateKg);
  const errors = (estimateKg: Float64Array): Float64Array =>
    estimateKg.map((kg, i) => (100 * (kg - (trueKg[i] as number))) / (trueKg[i] as number));
  const pairs = others.map(({ estimates }) => {
    const secondKg = pick(estimates.estimateKg);
    const within = [10, 20].map((percent) =>
      countPairs({ firstKg: secondKg, secondKg: firstKg, trueKg, percent }),
    );
    const [within10, within20] = within.map((counts) => ({
      difference: pairedDifference(counts),
      p: mcnemar(counts).midP,
    })) as [Share, Share];
    const { squared } = comparePairedErrors({ first: errors(secondKg), second: errors(firstKg) });
    return { method: estimates.method, within10, within20, squared };
  });
  const adjusted = adjustPValues(
    pairs.map(({ within10 }) => within10.p),
    "holm",
  );
  return {
    name: "comparison",
    caption: `Each method against ${words.methodName(first.estimates.method)}, on the same ${formatNumber(common.children)} children: difference of the shares within 10 % and 20 % (Newcombe's paired interval), p by McNemar (mid-p; adjusted by Holm), difference of squared errors (paired t)`,
    head: ["", "Within 10 %, points", "p", "p, Holm", "Within 20 %, points", "p", "Squared error, %²", "p"],
    rows: pairs.map(({ method, within10, within20, squared }, i) => [
      words.methodName(method),
      points(within10),
      pText(within10.p),
      pText(adjusted[i] as number),
      points(within20),
      pText(within20.p),
      `${tenth(squared.difference.value)} (${tenth(squared.difference.low)} to ${tenth(squared.difference.high)})`,
      pText(squared.p),
    ]),
    data: {
      columns: [
        "name",
        "children",
        "pw10_difference",
        "pw10_low",
        "pw10_high",
        "pw10_p",
        "pw10_p_holm",
        "pw20_difference",
        "pw20_low",
        "pw20_high",
        "pw20_p",
        "squared_difference",
        "squared_low",
        "squared_high",
        "squared_p",
      ],
      rows: pairs.map(({ method, within10, within20, squared }, i) => [
        methodId(method),
        common.children,
        ...[
          within10.difference.value,
          within10.difference.low,
          within10.difference.high,
          within10.p,
          adjusted[i] as number,
        ],
        ...[within20.difference.value, within20.difference.low, within20.difference.high, within20.p],
        ...[squared.difference.value, squared.difference.low, squared.difference.high, squared.p],
      ]),
    },
  };
}

interface Share {
  readonly difference: ReturnType<typeof pairedDifference>;
  readonly p: number;
}

function points({ difference: { value, low, high } }: Share): string {
  return `${value > 0 ? "+" : ""}${tenth(100 * value)} (${tenth(100 * low)} to ${tenth(100 * high)})`;
}

function pText(p: number): string {
  return p < 0.001 ? "< 0.001" : formatNumber(Math.round(p * 1000) / 1000);
}
