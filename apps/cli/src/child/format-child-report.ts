import type { NextMeasurement } from "@steelyard/core/body";
import type { ChildReport } from "@steelyard/core/child";
import type { SheetLine } from "@steelyard/core/dosing";
import { formatWeight, writtenKg } from "@steelyard/core/units";
import {
  cautionBlock,
  describeBodyWarning,
  describeNextMeasurement,
  describeProblem,
  describeRests,
  draftBanner,
} from "@steelyard/core/wording";
import type { SheetFormulary } from "../formulary/sheet-formulary.ts";
import { wrap } from "../wrap.ts";
import { formatEquipment, formatSigns } from "./format-lookups.ts";
import { formatSheetLine } from "./format-sheet-line.ts";
import { sharedWarnings } from "./shared-warnings.ts";

/** The whole report as text for a screen of 80 columns. */
export function formatChildReport({
  report,
  notes,
  next,
  loaded,
  others,
}: {
  report: ChildReport;
  notes: readonly string[];
  next: readonly NextMeasurement[];
  loaded: SheetFormulary;
  /** The other published doses of each line, by its id. */
  others: ReadonlyMap<string, readonly SheetLine[]>;
}): string {
  const blocks = [formatWeights(report, next), ...formatWarnings(report, notes)];
  if (!report.versions.formularySigned) {
    const { title, lines } = draftBanner();
    blocks.push(`*** ${title.toUpperCase()} ***\n${wrap(lines.join(" "))}`);
  }
  const shared = sharedWarnings(report.sheet);
  if (shared.size > 0) {
    const sentences = [...shared].map(([sentence, number]) => `! (${number}) ${sentence}`);
    blocks.push(sentences.map((sentence) => wrap(sentence, { hanging: "      " })).join("\n"));
  }
  const { problemOrder = [] } = loaded.formulary;
  for (const problem of new Set([...problemOrder, ...report.sheet.map((line) => line.problem)])) {
    const lines = report.sheet.filter((line) => line.problem === problem);
    if (lines.length === 0) continue;
    const texts = lines.map((line) => formatSheetLine(line, { shared, others: others.get(line.id) ?? [] }));
    blocks.push(`== ${describeProblem(problem)} ==\n${texts.join("\n")}`);
  }
  blocks.push(formatEquipment(report.equipment), formatSigns(report.signs));
  return `${[...blocks, formatCautions(), formatVersions(report, loaded)].join("\n\n")}\n`;
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

function formatVersions({ versions }: ChildReport, { signOff, fingerprint }: SheetFormulary): string {
  const { software, model, formulary, site } = versions;
  const by = signOff ? `signed by ${signOff.name}, ${signOff.role}, ${signOff.date}` : "draft, not signed";
  const calibrated = site === undefined ? "" : `, site ${site.name} (${site.createdOn})`;
  return wrap(
    `steelyard ${software}, body model ${model}${calibrated}, formulary ${formulary} (${by}; fingerprint ${fingerprint.slice(0, 16)}).`,
  );
}

function written(kg: number, measured = false): string {
  return formatWeight(writtenKg(kg, { measured }));
}

/** The same, set flush right under its neighbours. */
function column(kg: number, measured = false): string {
  return written(kg, measured).padStart(8);
}
