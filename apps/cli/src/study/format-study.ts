import { formatNumber } from "@steelyard/core/units";
import type { StudyAnalysis } from "@steelyard/study/analysis";
import type { ImportedStudy } from "@steelyard/study/import";
import { methodId } from "@steelyard/study/methods";
import type { StudyQuality } from "@steelyard/study/quality";
import { ENGLISH_REPORT as words } from "@steelyard/study/report";

const n = (value: number): string => formatNumber(value);
const tenth = (value: number): string => n(Math.round(value * 10) / 10);

/** The rows and what became of them, and what of the columns wants a second look; one sentence a line. */
export function describeStudy({ flow, mapping, cellProblems, facts }: ImportedStudy): string[] {
  const reasons = flow.leftOut.map(({ fate, rows }) => `${words.fate(fate)} ${n(rows)}`).join(", ");
  const leftOut = flow.read - flow.included;
  const left = mapping.filter(({ role }) => role.type === "left").map(({ column }) => column);
  const cells = cellProblems.reduce((sum, own) => sum + own.cells, 0);
  return [
    `${n(flow.read)} ${flow.read === 1 ? "row" : "rows"}: ${n(flow.included)} compared, ${n(leftOut)} left out${leftOut === 0 ? "" : `: ${reasons}`}.`,
    ...(left.length === 0 ? [] : [`Not read: ${left.join(", ")}.`]),
    ...mapping.flatMap(({ column, unit, doubt, role }) => {
      if (doubt?.type === "unit-unclear")
        return [
          `Column "${column}" was taken as ${unit}; it may be ${doubt.units.slice(1).join(" or ")}. Say which with --map.`,
        ];
      if (doubt?.type === "mixed-units")
        return [
          `Column "${column}" was taken as ${unit}; ${tenth(100 * doubt.share)} % of its numbers look like ${doubt.other} and were not used. To convert them: --map "${column}=${role.type === "field" ? role.field : role.type}:${unit}|${doubt.other}".`,
        ];
      return [];
    }),
    ...(cells === 0 ? [] : [`Cells that were not taken as they are: ${n(cells)}; the report lists them.`]),
    ...(facts.formulaCells === undefined || facts.formulaCells.count === 0
      ? []
      : [`Cells that hold a formula, read with their last value: ${n(facts.formulaCells.count)}.`]),
  ];
}

/** What the data's quality has to say at once. */
export function describeQuality({ flags, duplicates, slipSearch }: StudyQuality): string[] {
  const flagged = flags.reduce((sum, own) => sum + own.flagged, 0);
  const found = [
    ...(flagged > 0 ? [`WHO flags ${n(flagged)}`] : []),
    ...(duplicates.rows > 0 ? [`rows entered twice ${n(duplicates.rows)}`] : []),
    ...(slipSearch.slips.length > 0
      ? [`rows whose numbers do not belong together ${n(slipSearch.slips.length)}`]
      : []),
  ];
  return found.length === 0 ? [] : [`Quality: ${found.join(", ")}. Nothing was left out for it.`];
}

/** One line a method, for a screen of 80 columns. */
export function formatAccuracy({ methods }: StudyAnalysis): string {
  const row = (name: string, cells: readonly string[]): string =>
    `${name.slice(0, 30).padEnd(32)}${cells.map((cell) => cell.padStart(9)).join("")}`;
  return [
    row("estimate - true, % of true", ["children", "mean", "SD", "in 10 %", "in 20 %"]),
    ...methods.map(({ estimates, overall }) =>
      overall === undefined
        ? row(methodId(estimates.method), [n(estimates.served), "", "", "", ""])
        : row(methodId(estimates.method), [
            n(overall.n),
            tenth(overall.meanPercent),
            tenth(overall.sdPercent),
            `${tenth(100 * overall.within10.share)} %`,
            `${tenth(100 * overall.within20.share)} %`,
          ]),
    ),
    "",
  ].join("\n");
}
