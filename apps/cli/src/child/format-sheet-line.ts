import type { DoseLine, DrawnVolume, FurtherDose, PreparedInfusion, SheetLine } from "@steelyard/core/dosing";
import { formatNumber, formatQuantity, formatWeight } from "@steelyard/core/units";
import { describeDosingWarning, describeUnavailable } from "@steelyard/core/wording";
import { wrap } from "../wrap.ts";

const INDENT = { indent: "    ", hanging: "      " };

/** One use of one medicine: what it is, the dose with its volume or rate, how it is given, and every flag. */
export function formatSheetLine(
  line: SheetLine,
  {
    shared,
    others,
  }: {
    /** Warnings that stand above the sheet, with their numbers. */
    readonly shared: ReadonlyMap<string, number>;
    /** The other published doses, for the same child. */
    readonly others: readonly SheetLine[];
  },
): string {
  const { guidance } = line;
  const texts = [
    ...(line.unavailable === undefined
      ? doseTexts(line)
      : [`NO DOSE: ${describeUnavailable(line.unavailable)}`]),
    ...warningTexts(line, shared),
    ...others.map(otherText),
    guidance.administration,
    ...(guidance.repeat === undefined ? [] : [guidance.repeat]),
    ...labelled("Not if", guidance.contraindications),
    ...labelled("Caution", guidance.cautions),
  ];
  const head = wrap(`${line.medicine} | ${line.use} | ${line.route}`, { indent: "  ", hanging: "    " });
  return [head, ...texts.map((text) => wrap(text, INDENT))].join("\n");
}

function warningTexts({ warnings }: SheetLine, shared: ReadonlyMap<string, number>): string[] {
  const sentences = [...new Set(warnings.map((warning) => describeDosingWarning(warning)))];
  const numbers = sentences.flatMap((sentence) => shared.get(sentence) ?? []);
  return [
    ...sentences.filter((sentence) => !shared.has(sentence)).map((sentence) => `! ${sentence}`),
    ...(numbers.length === 0 ? [] : [`! See ${numbers.map((number) => `(${number})`).join(", ")} above.`]),
  ];
}

/** Another published dose of the same use, and how to get it. */
function otherText(line: SheetLine): string {
  const dose = line.unavailable === undefined ? doseText(line) : "no dose";
  return `or ${dose}: ${line.option.title} (--choose ${line.id}=${line.option.id})`;
}

function doseTexts(line: DoseLine): string[] {
  const basis = `on ${line.basis} weight ${formatWeight(line.basisKg)}`;
  const added =
    line.addedTo === undefined
      ? []
      : [`Add to ${formatNumber(line.addedTo.ml)}\u00a0mL of ${line.addedTo.diluent}.`];
  return [
    `>> ${doseText(line)}, ${basis}`,
    ...(line.equivalents ?? []).map(
      ({ dose, of: other }) => `By the label: ${formatQuantity(dose)} of ${other}.`,
    ),
    ...dilutionTexts(line.volume),
    ...added,
    ...portionTexts(line),
    ...givingTexts(line),
    ...(line.preparations ?? []).map(preparationText),
    ...line.further.map((next: FurtherDose) => `then ${formatQuantity(next.dose)}${volumeText(next)}`),
  ];
}

/** The dose with its volume or rate: "280 micrograms = 2.8 mL of 0.1 mg/mL". */
function doseText(line: DoseLine): string {
  const limited = line.limitedBy === undefined ? "" : ` (${line.limitedBy.replace("-", " ")})`;
  const of = line.of === undefined ? "" : ` of ${line.of}`;
  const isRate = line.dose.unit === "mL" && line.dose.per === "h";
  const rate =
    line.rate === undefined
      ? ""
      : `${isRate ? "" : ` = ${formatNumber(line.rate.mlPerH)}\u00a0mL/h`} of ${line.rate.concentration}`;
  return `${formatQuantity(line.dose)}${of}${volumeText(line)}${rate}${limited}`;
}

/** "540 mL over 8 h, 67.5 mL/h; then 540 mL over 16 h, 33.8 mL/h." */
function portionTexts({ portions = [] }: DoseLine): string[] {
  if (portions.length === 0) return [];
  const parts = portions.map(
    ({ ml, overH, mlPerH }) =>
      `${formatQuantity({ amount: ml, unit: "mL" })} over ${formatNumber(overH)}\u00a0h, ${formatNumber(mlPerH)}\u00a0mL/h`,
  );
  return [`${parts.join("; then ")}.`];
}

/** The quickest and the strongest it may be given. */
function givingTexts({ giving }: DoseLine): string[] {
  const { shortestMin, leastMl } = giving ?? {};
  return [
    ...(shortestMin === undefined ? [] : [`Not in less than ${formatNumber(shortestMin)}\u00a0min.`]),
    ...(leastMl === undefined ? [] : [`In ${formatNumber(leastMl)}\u00a0mL or more.`]),
  ];
}

/** " = 2.8 mL of 0.1 mg/mL", " of 100 micrograms/puff"; of a fluid that is given as it is, nothing is left to say. */
function volumeText({ dose, volume, puffs }: Pick<DoseLine, "dose" | "volume" | "puffs">): string {
  if (puffs !== undefined) {
    const count = dose.unit === "puff" ? "" : ` = ${formatQuantity({ amount: puffs.puffs, unit: "puff" })}`;
    return `${count} of ${puffs.strength}`;
  }
  if (volume === undefined || dose.unit === "mL") return "";
  return ` = ${formatQuantity({ amount: volume.ml, unit: "mL" })} of ${volume.strength}`;
}

function dilutionTexts(volume: DrawnVolume | undefined): string[] {
  if (volume?.dilution === undefined) return [];
  const { strength, takeMl, addMl, diluent } = volume.dilution;
  const ml = (amount: number): string => formatQuantity({ amount, unit: "mL" });
  return [
    `First dilute: ${ml(takeMl)} of ${strength} and ${ml(addMl)} of ${diluent} give ${volume.strength}.`,
  ];
}

/** How one syringe is made up and run. */
function preparationText(preparation: PreparedInfusion): string {
  const { amount, totalMl, diluent, concentration, mlPerH, lowMlPerH, highMlPerH, dosePerMlPerH, lastsH } =
    preparation;
  const rate = (low: number, high: number): string =>
    `${formatNumber(low)} to ${formatNumber(high)}\u00a0mL/h`;
  return (
    `Syringe: ${formatQuantity(amount)} made up to ${formatNumber(totalMl)}\u00a0mL with ${diluent} (${concentration}); ` +
    `start at ${formatNumber(mlPerH)}\u00a0mL/h, range ${rate(lowMlPerH, highMlPerH)}; ` +
    `1\u00a0mL/h gives ${formatQuantity(dosePerMlPerH)}; lasts ${formatNumber(lastsH)}\u00a0h.`
  );
}

function labelled(label: string, texts: readonly string[]): string[] {
  return texts.length === 0 ? [] : [`${label}: ${texts.join(" ")}`];
}
