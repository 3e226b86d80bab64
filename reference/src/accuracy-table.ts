import { type Accuracy, type Judged, measureAccuracy } from "./accuracy.ts";

const header = [
  "children",
  "within 10 %",
  "within 20 %",
  "mean error %",
  "SD of error %",
  "95 % interval covers",
  "half-width %",
];

/** A Markdown table of accuracy, one row per named group; a group of fewer than `fewest` children shows its number alone. */
export function accuracyTable(
  label: string,
  groups: readonly (readonly [name: string, rows: readonly Judged[]])[],
  fewest = 10,
): string {
  const lines = [`| ${[label, ...header].join(" | ")} |`, `| --- |${" ---: |".repeat(header.length)}`];
  for (const [name, rows] of groups) {
    const cells =
      rows.length < fewest
        ? [String(rows.length), ...header.slice(1).map(() => "–")]
        : accuracyCells(measureAccuracy(rows));
    lines.push(`| ${[name, ...cells].join(" | ")} |`);
  }
  return lines.join("\n");
}

function accuracyCells(accuracy: Accuracy): readonly string[] {
  return [
    String(accuracy.children),
    accuracy.pw10.toFixed(2),
    accuracy.pw20.toFixed(2),
    accuracy.meanError.toFixed(2),
    accuracy.sdError.toFixed(2),
    accuracy.coverage.toFixed(1),
    accuracy.halfWidth.toFixed(1),
  ];
}
