import type { DoseLine, DosingWarning, DrawnVolume, FurtherDose, SheetLine } from "@steelyard/core/dosing";
import { formatNumber, formatQuantity, type NumberStyle, writeLabel } from "@steelyard/core/units";
import { describeDosingWarning, describeUnavailable } from "@steelyard/core/wording";
import type { PaperMessages } from "../messages/paper-messages.ts";

/** One line of a sheet in the words of a page. */
export interface WrittenLine {
  /** "Adrenaline, cardiac arrest, IV". */
  readonly head: string;
  /** What is drawn up or set: the line that is read first. */
  readonly dose: string;
  /** The weight it goes by; absent where there is no dose. */
  readonly basis?: string;
  /** Everything else that must be known to give it. */
  readonly notes: readonly string[];
}

/**
 * The same dose, volume and rate that the screen shows, written by the same functions, with every warning: a limit and a rounding
 * within 5 % beside the dose, a dilution as its recipe, all others as whole sentences.
 */
export function writeLine(line: SheetLine, messages: PaperMessages): WrittenLine {
  const head = `${line.medicine}, ${line.use}, ${line.route}`;
  const warned = sentencesOf(line.warnings, messages);
  if (line.unavailable !== undefined) {
    return {
      head,
      dose: messages.booklet.noDose({
        because: describeUnavailable(line.unavailable, messages.language.dosing),
      }),
      notes: warned,
    };
  }
  return {
    head,
    dose: `${doseText(line, messages)}${whatWasDone(line, messages)}`,
    basis: messages.booklet.basis[line.basis],
    notes: [
      ...dilutionNotes(line.volume, messages),
      ...additionNotes(line, messages),
      ...givingNotes(line, messages),
      ...(line.preparations ?? []).slice(0, 1).map((own) => preparationNote(own, messages)),
      ...warned,
      ...line.further.flatMap((next) => furtherNotes(next, messages)),
    ],
  };
}

/** Warnings that stand beside the dose, or as a recipe, and not in a sentence. */
function isBesideDose(warning: DosingWarning): boolean {
  const { type } = warning;
  return type === "limited" || type === "diluted" || (type === "rounded" && !warning.aboveTolerance);
}

function sentencesOf(warnings: readonly DosingWarning[], { language }: PaperMessages): readonly string[] {
  return warnings
    .filter((warning) => !isBesideDose(warning))
    .map((warning) => describeDosingWarning(warning, language.dosing));
}

/** " (maximum, rounded down 1.4 %)": what the limits and the marks of a syringe or pump made of the rule. */
function whatWasDone(
  { limitedBy, warnings }: Pick<FurtherDose, "limitedBy" | "warnings">,
  { booklet, language }: PaperMessages,
): string {
  const done = limitedBy === undefined ? [] : [limitedBy === "minimum" ? booklet.minimum : booklet.maximum];
  for (const warning of warnings) {
    if (warning.type !== "rounded" || warning.aboveTolerance) continue;
    const percent = formatNumber(Math.abs(warning.errorPercent), language.numbers);
    done.push(booklet.rounded({ percent, isLess: warning.errorPercent < 0 }));
  }
  return done.length === 0 ? "" : ` (${done.join(", ")})`;
}

function furtherNotes(next: FurtherDose, messages: PaperMessages): readonly string[] {
  const dose = `${amountText(next, messages)}${volumeText(next, messages)}${whatWasDone(next, messages)}`;
  return [
    messages.booklet.further({ dose }),
    ...dilutionNotes(next.volume, messages),
    ...sentencesOf(next.warnings, messages),
  ];
}

function doseText(line: DoseLine, messages: PaperMessages): string {
  const { booklet, language } = messages;
  const of = line.of === undefined ? "" : ` ${line.of}`;
  const isRate = line.dose.unit === "mL" && line.dose.per === "h";
  const { rate } = line;
  const rateText =
    rate === undefined || isRate
      ? ""
      : ` = ${booklet.rate({ mlPerH: mlPerH(rate.mlPerH, language.numbers), concentration: writeLabel(rate.concentration, language.numbers) })}`;
  return `${amountText(line, messages)}${of}${volumeText(line, messages)}${rateText}`;
}

/** "10 puffs of 100 micrograms/puff" where the dose counts them, else the dose itself. */
function amountText(
  { dose, puffs }: Pick<FurtherDose, "dose" | "puffs">,
  { booklet, language }: PaperMessages,
): string {
  const amount = formatQuantity(dose, language.numbers);
  return puffs === undefined || dose.unit !== "puff"
    ? amount
    : booklet.volume({ ml: amount, strength: writeLabel(puffs.strength, language.numbers) });
}

function volumeText(
  { dose, volume, puffs }: Pick<FurtherDose, "dose" | "volume" | "puffs">,
  { booklet, language }: PaperMessages,
): string {
  if (puffs !== undefined && dose.unit !== "puff") {
    const count = formatQuantity({ amount: puffs.puffs, unit: "puff" }, language.numbers);
    return ` = ${booklet.volume({ ml: count, strength: writeLabel(puffs.strength, language.numbers) })}`;
  }
  if (volume === undefined || dose.unit === "mL") return "";
  return ` = ${booklet.volume({ ml: ml(volume.ml, language.numbers), strength: writeLabel(volume.strength, language.numbers) })}`;
}

function dilutionNotes(
  volume: DrawnVolume | undefined,
  { booklet, language }: PaperMessages,
): readonly string[] {
  if (volume?.dilution === undefined) return [];
  const { takeMl, strength, addMl, diluent } = volume.dilution;
  return [
    booklet.dilute({
      take: ml(takeMl, language.numbers),
      strength: writeLabel(strength, language.numbers),
      add: ml(addMl, language.numbers),
      diluent,
      result: writeLabel(volume.strength, language.numbers),
    }),
  ];
}

function additionNotes({ addedTo }: DoseLine, { booklet, language }: PaperMessages): readonly string[] {
  return addedTo === undefined
    ? []
    : [booklet.addTo({ ml: ml(addedTo.ml, language.numbers), diluent: addedTo.diluent })];
}

function givingNotes({ giving }: DoseLine, { booklet, language }: PaperMessages): string[] {
  const { shortestMin, leastMl } = giving ?? {};
  return [
    ...(shortestMin === undefined
      ? []
      : [booklet.notUnder({ minutes: formatNumber(shortestMin, language.numbers) })]),
    ...(leastMl === undefined ? [] : [booklet.atLeast({ ml: ml(leastMl, language.numbers) })]),
  ];
}

function preparationNote(
  own: NonNullable<DoseLine["preparations"]>[number],
  { booklet, language }: PaperMessages,
): string {
  return booklet.syringe({
    amount: formatQuantity(own.amount, language.numbers),
    totalMl: ml(own.totalMl, language.numbers),
    diluent: own.diluent,
    start: mlPerH(own.mlPerH, language.numbers),
    low: formatNumber(own.lowMlPerH, language.numbers),
    high: mlPerH(own.highMlPerH, language.numbers),
    perMl: formatQuantity(own.dosePerMlPerH, language.numbers),
  });
}

function ml(amount: number, style: NumberStyle): string {
  return formatQuantity({ amount, unit: "mL" }, style);
}

function mlPerH(amount: number, style: NumberStyle): string {
  return formatQuantity({ amount, unit: "mL", per: "h" }, style);
}
