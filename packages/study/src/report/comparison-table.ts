import { formatNumber } from "@steelyard/core/units";
import type { StudyAnalysis } from "../analysis/index.ts";
import {
  adjustPValues,
  comparePairedErrors,
  countPairs,
  mcnemar,
  type NonInferiority,
  pairedDifference,
  testNonInferiority,
} from "../comparison/index.ts";
import { methodId } from "../methods/index.ts";
import type { ReportTable } from "./block.ts";
import { tenth } from "./english-words.ts";
import { findingsEn } from "./messages/findings.en.ts";
import type { ReportWords } from "./report-words.ts";

/** What methods are compared with, and how. */
export interface ComparisonChoice {
  /** Id of the method that all others are compared with; the first when absent. */
  readonly reference?: string | undefined;
  /** Points of PW10 by which a method may be worse than the reference and still count as not worse; chosen before the data are seen. */
  readonly marginPoints?: number | undefined;
  /** For several comparisons; Holm when absent. */
  readonly adjust?: "holm" | "benjamini-hochberg" | undefined;
}

/** Every other method against the reference, pair by pair on the children that all of them serve; undefined with fewer than two or too few children. */
export function comparisonTable(
  { table, methods, common }: StudyAnalysis,
  words: ReportWords,
  { reference, marginPoints, adjust = "holm" }: ComparisonChoice = {},
): ReportTable | undefined {
  const first = methods.find(({ estimates }) => methodId(estimates.method) === reference) ?? methods[0];
  const others = methods.filter((own) => own !== first);
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
  const pairs = others.map(({ estimates }): Pair => {
    const secondKg = pick(estimates.estimateKg);
    const [within10, within20] = [10, 20].map((percent) => {
      const counts = countPairs({ firstKg: secondKg, secondKg: firstKg, trueKg, percent });
      return { difference: pairedDifference(counts), p: mcnemar(counts).midP, counts };
    }) as [Share & { counts: ReturnType<typeof countPairs> }, Share];
    const { squared } = comparePairedErrors({ first: errors(secondKg), second: errors(firstKg) });
    const margin = marginPoints === undefined ? undefined : marginPoints / 100;
    return {
      name: words.methodName(estimates.method),
      id: methodId(estimates.method),
      within10,
      within20,
      squared,
      ...(margin === undefined ? {} : { verdict: testNonInferiority({ counts: within10.counts, margin }) }),
    };
  });
  const adjusted = (
    [({ within10 }) => within10.p, ({ within20 }) => within20.p, ({ squared }) => squared.p] as ((
      pair: Pair,
    ) => number)[]
  ).map((p) => adjustPValues(pairs.map(p), adjust));
  const at = (figure: number, i: number): number => adjusted[figure]?.[i] as number;
  const method = adjust === "holm" ? "Holm" : "Benjamini and Hochberg";
  const margin =
    marginPoints === undefined
      ? ""
      : `; "${findingsEn.verdict["non-inferior"]}" where the lower end of the interval within 10 % is above −${formatNumber(marginPoints)} points, the margin`;
  return {
    name: "comparison",
    caption: `Each method against ${words.methodName(first.estimates.method)}, on the same ${formatNumber(common.children)} children: difference of the shares within 10 % and 20 % (Newcombe's paired interval), p by McNemar (mid-p), difference of squared errors (paired t); each p adjusted for the ${formatNumber(pairs.length)} comparisons by ${method}${margin}`,
    head: [
      "",
      "Within 10 %, points",
      "p",
      "Within 20 %, points",
      "p",
      "Squared error, %²",
      "p",
      ...(marginPoints === undefined ? [] : [`Margin ${formatNumber(marginPoints)} points`]),
    ],
    rows: pairs.map(({ name, within10, within20, squared, verdict }, i) => [
      name,
      points(within10),
      pText(at(0, i)),
      points(within20),
      pText(at(1, i)),
      `${tenth(squared.difference.value)} (${tenth(squared.difference.low)} to ${tenth(squared.difference.high)})`,
      pText(at(2, i)),
      ...(verdict === undefined ? [] : [findingsEn.verdict[verdict.verdict]]),
    ]),
    data: {
      columns: [
        "name",
        "reference",
        "children",
        "pw10_difference",
        "pw10_low",
        "pw10_high",
        "pw10_p",
        "pw10_p_adjusted",
        "pw20_difference",
        "pw20_low",
        "pw20_high",
        "pw20_p",
        "pw20_p_adjusted",
        "squared_difference",
        "squared_low",
        "squared_high",
        "squared_p",
        "squared_p_adjusted",
        "adjusted_by",
        "margin",
        "verdict",
      ],
      rows: pairs.map(({ id, within10, within20, squared, verdict }, i) => [
        id,
        methodId(first.estimates.method),
        common.children,
        ...numbersOf(within10),
        at(0, i),
        ...numbersOf(within20),
        at(1, i),
        ...numbersOf(squared),
        at(2, i),
        adjust,
        verdict?.margin ?? "",
        verdict?.verdict ?? "",
      ]),
    },
  };
}

interface Share {
  readonly difference: ReturnType<typeof pairedDifference>;
  readonly p: number;
}

interface Pair {
  readonly name: string;
  readonly id: string;
  readonly within10: Share;
  readonly within20: Share;
  readonly squared: Share;
  readonly verdict?: NonInferiority;
}

function numbersOf({ difference: { value, low, high }, p }: Share): readonly number[] {
  return [value, low, high, p];
}

function points({ difference: { value, low, high } }: Share): string {
  return `${value > 0 ? "+" : ""}${tenth(100 * value)} (${tenth(100 * low)} to ${tenth(100 * high)})`;
}

function pText(p: number): string {
  return p < 0.001 ? "< 0.001" : formatNumber(Math.round(p * 1000) / 1000);
}
