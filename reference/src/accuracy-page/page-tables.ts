import { type Errors, measureAccuracy, measureErrors } from "../accuracy.ts";
import type { AccuracyResults, FormulaAccuracy } from "./compute-accuracy.ts";
import { withCommas } from "./figures/with-commas.ts";
import { groupByZ, type ZGroup } from "./group-by-z.ts";
import { publishedClasses } from "./published-classes.ts";
import { type Placed, type Way, ways } from "./regression-to-the-mean.ts";

/** A Markdown table; the first column to the left, the others to the right. */
function table(header: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  return [line(header), line(header.map((_, i) => (i === 0 ? "---" : "---:"))), ...rows.map(line)].join("\n");
}

function percents({ pw10, pw20 }: Errors): readonly string[] {
  return [pw10.toFixed(1), pw20.toFixed(1)];
}

/** The model beside what was published per class of method. */
export function classesTable({ nhanes }: AccuracyResults): string {
  const own = ["length", "length + arm", "length + arm + sex", "length + arm + sex + waist"].flatMap(
    (name) => {
      const rows = nhanes.get(name) ?? [];
      if (rows.length === 0) return [];
      const children = withCommas(rows.length);
      return [[`this model: ${name}`, ...percents(measureErrors(rows)), `NHANES, ${children} children`]];
    },
  );
  const published = publishedClasses.map(({ method, within10, within20, sourceId, verification }) => [
    method,
    within10,
    within20,
    `\`${sourceId}\`, ${verification}`,
  ]);
  return table(["method", "within 10 %", "within 20 %", "from"], [...own, ...published]);
}

/** Plain formulas, each beside the model on the same children. */
export function formulasTable(formulas: readonly FormulaAccuracy[]): string {
  return table(
    [
      "formula",
      "children",
      "within 10 %",
      "within 20 %",
      "mean error %",
      "SD of error %",
      "model, within 10 %",
      "model, within 20 %",
      "from",
    ],
    formulas.map(({ formula, rows, model }) => {
      const errors = measureErrors(rows);
      return [
        formula.name,
        withCommas(errors.children),
        ...percents(errors),
        errors.meanError.toFixed(1),
        errors.sdError.toFixed(1),
        ...percents(measureAccuracy(model)),
        `\`${formula.sourceId}\``,
      ];
    }),
  );
}

/** Mean errors by weight for length, grouped by the truth and by the estimate. */
export function groupsTable(own: Readonly<Record<Way, readonly Placed[]>>): string {
  const columns = (["trueZ", "estimateZ"] as const).flatMap((by) =>
    (["length", "arm", "exact"] as const).map((way) => groupByZ(own[way], by)),
  );
  const names = groupByZ([], "trueZ").map(({ name }) => name);
  return table(
    [
      "z of weight for length",
      "by the truth: length",
      "length + arm + sex",
      "weights drawn from the model",
      "by the estimate: length",
      "length + arm + sex",
      "weights drawn from the model",
    ],
    names.map((name, i) => [
      name,
      ...columns.map((groups) => {
        return meanOf(groups[i] as ZGroup);
      }),
    ]),
  );
}

/** The mean of fewer children is not shown. */
const fewest = 10;

function meanOf({ n, meanError }: Pick<ZGroup, "n" | "meanError">): string {
  if (meanError === undefined || n < fewest) return `– (${n})`;
  // Never "-0.0".
  return `${(Math.round(10 * meanError) / 10 + 0).toFixed(1)} (${withCommas(n)})`;
}

/** What one more fact leaves of the error in the thin, grouped by their true weight. */
export function onemoreTable(placed: AccuracyResults["placed"]): string {
  const groups = ["below -3", "-3 to -2"];
  return table(
    ["known", ...placed.flatMap(({ name }) => groups.map((group) => `${name}: z ${group}`))],
    (Object.keys(ways) as Way[])
      .filter((way) => way !== "exact")
      .map((way) => [
        ways[way],
        ...placed.flatMap((population) =>
          groups.map((group) => {
            const found = groupByZ(population.ways[way], "trueZ").find(({ name }) => name === group);
            return meanOf(found ?? { n: 0, meanError: undefined });
          }),
        ),
      ]),
  );
}
