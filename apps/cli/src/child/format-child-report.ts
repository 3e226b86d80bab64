import type { NextMeasurement } from "@steelyard/core/body";
import type { ChildReport } from "@steelyard/core/child";
import { formatWeight } from "@steelyard/core/units";
import {
  cautionBlock,
  describeBodyWarning,
  describeNextMeasurement,
  describeProblem,
  describeRests,
  draftBanner,
} from "@steelyard/core/wording";
import { wrap } from "../wrap.ts";
import { formatEquipment, formatSigns } from "./format-lookups.ts";
import { formatSheetLine } from "./format-sheet-line.ts";

/** The whole report as text for a screen of 80 columns. */
export function formatChildReport({
  report,
  notes,
  next,
}: {
  report: ChildReport;
  notes: readonly string[];
  next: readonly NextMeasurement[];
}): string {
  const blocks = [formatWeights(report, next), ...formatWarnings(report, notes)];
  if (!report.versions.formularySigned) {
    const { title, lines } = draftBanner();
    blocks.push(`*** ${title.toUpperCase()} ***\n${wrap(lines.join(" "))}`);
  }
  for (const problem of new Set(report.sheet.map((line) => line.problem))) {
    const lines = report.sheet.filter((line) => line.problem === problem);
    blocks.push(`== ${describeProblem(problem)} ==\n${lines.map(formatSheetLine).join("\n")}`);
  }
  blocks.push(formatEquipment(report.equipment), formatSigns(report.signs));
  return `${[...blocks, formatCautions(), formatVersions(report)].join("\n\n")}\n`;
}

function formatWeights({ weight, warnings }: ChildReport, next: readonly NextMeasurement[]): string {
  const measured = weight.rests.includes("scaleKg");
  const { totalKg, low95Kg, high95Kg, idealKg, adjustedKg, leanKg } = weight;
  const total = `Total weight     ${column(totalKg, measured)}`;
  const range = `   95 % range ${written(low95Kg)} to ${written(high95Kg)}`;
  const ideal =
    idealKg === undefined
      ? "Ideal weight     not known: it needs a length of 45 to 205 cm"
      : `Ideal weight     ${column(idealKg)}   median for this length`;
  const others = [
    adjustedKg === undefined
      ? []
      : [`Adjusted weight  ${column(adjustedKg)}   ideal + 0.4 x (total - ideal)`],
    leanKg === undefined ? [] : [`Lean weight      ${column(leanKg)}`],
  ].flat();
  // Without a length, the length comes first; a warning says so.
  const advice = warnings.some(({ type }) => type === "no-length") ? [] : next.slice(0, 1);
  return [
    total + (measured ? "" : range),
    ideal,
    ...others,
    wrap(describeRests(weight.rests)),
    ...advice.map((measurement) => wrap(describeNextMeasurement(measurement))),
  ]
    .join("\n")
    .replaceAll("\u00a0", " ");
}

function formatWarnings({ warnings }: ChildReport, notes: readonly string[]): string[] {
  const sentences = [...notes, ...warnings.map((warning) => describeBodyWarning(warning))];
  if (sentences.length === 0) return [];
  return [sentences.map((sentence) => wrap(`! ${sentence}`, { hanging: "  " })).join("\n")];
}

function formatCautions(): string {
  const { title, lines } = cautionBlock();
  return wrap(`${title}: ${lines.join(" ")}`);
}

function formatVersions({ versions }: ChildReport): string {
  const { software, model, formulary, formularySigned, site } = versions;
  const signed = formularySigned ? "signed" : "draft, not signed";
  const calibrated = site === undefined ? "" : `, site ${site.name} (${site.createdOn})`;
  return wrap(`steelyard ${software}, body model ${model}${calibrated}, formulary ${formulary} (${signed}).`);
}

/** A weight as it enters the doses: to 0.1 kg, to 0.01 kg under 3 kg and from a scale. */
function written(kg: number, measured = false): string {
  const perKg = measured || kg < 3 ? 100 : 10;
  return formatWeight(Math.round(kg * perKg) / perKg);
}

/** The same, set flush right under its neighbours. */
function column(kg: number, measured = false): string {
  return written(kg, measured).padStart(8);
}
