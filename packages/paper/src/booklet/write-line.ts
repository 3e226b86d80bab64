import type { DoseLine, DosingWarning, DrawnVolume, FurtherDose, SheetLine } from "@steelyard/core/dosing";
import { formatNumber, formatQuantity, type NumberStyle, writeLabel } from "@steelyard/core/units";
import { describeDosingWarning, describeUnavailable } from "@steelyard/core/wording";
import type { PaperMessages } from "../messages/paper-messages.ts";
import type { SharedSentences } from "./shared-sentences.ts";

/** One line of a sheet in the words of a page. */
export interface WrittenLine {
  /** "Adrenaline, cardiac arrest, IV". */
  readonly head: string;
  /** What is drawn up or set, and "(maximum)" where a limit made it: the line that is read first. */
  readonly dose: string;
  /** "(rounded down 1.4 %)", for which there is not always room beside the dose. */
  readonly rounded?: string;
  readonly isWithheld?: true;
  /** The weight it goes by; absent where there is no dose. */
  readonly basis?: string;
  /** Everything else that must be known to give it. */
  readonly notes: readonly string[];
  /** Marks of sentences that stand once for many lines. */
  readonly marks: readonly string[];
}

/**
 * The same dose, volume and rate that the screen shows, written by the same functions, with every warning: a limit and a rounding
 * within 5 % beside the dose, a dilution as its recipe, all others as whole sentences, of which those in `shared` stand elsewhere under a mark.
 */
export function writeLine(
  line: SheetLine,
  messages: PaperMessages,
  shared: SharedSentences = new Map(),
): WrittenLine {
  const written = writeWhole(line, messages);
  const marks = written.notes.flatMap((note) => shared.get(note) ?? []);
  const notes = written.notes.filter((note) => !shared.has(note));
  return { ...written, notes, marks: [...new Set(marks)] };
}

function writeWhole(line: SheetLine, messages: PaperMessages): Omit<WrittenLine, "marks"> {
  const head = headOf(line);
  const warned = sentencesOf(line.warnings, messages);
  if (line.unavailable !== undefined) {
    return {
      head,
      dose: messages.booklet.noDose({
        because: describeUnavailable(line.unavailable, messages.language.dosing),
      }),
      isWithheld: true,
      notes: warned,
    };
  }
  const rounded = roundings(line, messages);
  return {
    head,
    dose: `${doseText(line, messages)}${inBrackets(limits(line, messages))}`,
    ...(rounded.length === 0 ? {} : { rounded: inBrackets(rounded).trim() }),
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

/** "adrenaline, cardiac arrest, IV". */
export function headOf({ medicine, use, route }: Pick<SheetLine, "medicine" | "use" | "route">): string {
  return `${medicine}, ${use}, ${route}`;
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

function limits({ limitedBy }: Pick<FurtherDose, "limitedBy">, { booklet }: PaperMessages): string[] {
  return limitedBy === undefined ? [] : [limitedBy === "minimum" ? booklet.minimum : booklet.maximum];
}

/** What the marks of a syringe or pump made of the rule. */
function roundings(
  { warnings }: Pick<FurtherDose, "warnings">,
  { booklet, language }: PaperMessages,
): string[] {
  return warnings.flatMap((warning) => {
    if (warning.type !== "rounded" || warning.aboveTolerance) return [];
    const percent = formatNumber(Math.abs(warning.errorPercent), language.numbers);
    return [booklet.rounded({ percent, isLess: warning.errorPercent < 0 })];
  });
}

/** " (maximum, rounded down 1.4 %)". */
function inBrackets(done: readonly string[]): string {
  return done.length === 0 ? "" : ` (${done.join(", ")})`;
}

function furtherNotes(next: FurtherDose, messages: PaperMessages): readonly string[] {
  const done = inBrackets([...limits(next, messages), ...roundings(next, messages)]);
  const dose = `${amountText(next, messages)}${volumeText(next, messages)}${done}`;
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
